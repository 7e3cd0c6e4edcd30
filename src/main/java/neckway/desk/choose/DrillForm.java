package neckway.desk.choose;

import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.IntConsumer;
import java.util.stream.IntStream;
import javafx.beans.property.BooleanProperty;
import javafx.collections.FXCollections;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;
import neckway.desk.Desk;
import neckway.desk.DrillModel;
import neckway.desk.LookModel;
import neckway.desk.NumberSpinner;
import neckway.desk.Texts;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.neck.BadInput;
import neckway.neck.Key;
import neckway.neck.Neck;
import neckway.neck.RouteBuilder;

/**
 * Everything of a drill that is not chosen on the neck, and how the neck is drawn. What is seldom
 * changed is folded away, while all is straight and begins on the first beat.
 */
final class DrillForm {
  private static final double TEMPO_STEP = 2;

  private final Desk desk;
  private final DrillModel drill;
  private final ChoosingModel model;
  private final VBox form = new VBox();
  private final ComboBox<Key> key = new ComboBox<>();
  private final TuningField tuning = new TuningField();
  private final ComboBox<Integer> start = new ComboBox<>();
  private final NumberSpinner count;
  private final NumberSpinner tempo;
  private final ComboBox<Integer> notes = new ComboBox<>();
  private final NumberSpinner rounds;
  private final FeelRows feel;
  private final ToggleButton more = new ToggleButton(Texts.of("choosing.more"));
  private final FlowPane rest;
  private boolean filling;

  DrillForm(Desk desk, ChoosingModel model, DrillFiles files) {
    this.desk = desk;
    this.model = model;
    drill = desk.drill();
    count = number("choosing.count", 1, Neck.LONGEST_CHAIN, 1, 0);
    tempo = number("choosing.tempo", Pulse.SLOWEST, Pulse.FASTEST, TEMPO_STEP, 1);
    notes.getItems().setAll(IntStream.rangeClosed(1, Pulse.MOST_NOTES_PER_BEAT).boxed().toList());
    notes.setConverter(shown(DrillForm::notesWords));
    notes.setMaxWidth(Double.MAX_VALUE);
    rounds = number("choosing.repeat", 1, RouteBuilder.MOST_ROUNDS, 1, 0);
    key.setItems(FXCollections.observableArrayList(ChoosingModel.KEYS));
    key.setEditable(true);
    key.setConverter(new KeyWords());
    key.setMaxWidth(Double.MAX_VALUE);
    start.setMaxWidth(Double.MAX_VALUE);
    start.setConverter(shown(fret -> Texts.of("choosing.start.fret", fret)));
    GridPane where = new GridPane();
    where.getStyleClass().add("group");
    place(where, 0, "choosing.key", key);
    place(where, 1, "choosing.start", start);
    GridPane howMuch = new GridPane();
    howMuch.getStyleClass().add("group");
    place(howMuch, 0, "choosing.count", count);
    place(howMuch, 1, "choosing.tempo", tempo);
    FlowPane few = row(where, howMuch);
    more.getStyleClass().add("keyed");
    more.setMinWidth(Region.USE_PREF_SIZE);
    GridPane what = group("choosing.group.drill");
    place(what, 1, "choosing.tuning", tuning);
    place(what, 2, "choosing.notes", notes);
    place(what, 3, "choosing.repeat", rounds);
    what.add(buttons(files), 0, 4, 2, 1);
    GridPane pace = group("choosing.group.feel");
    feel = new FeelRows(drill, pace, 1, desk::say);
    GridPane looks = group("choosing.group.look");
    place(looks, 1, "choosing.label", labels());
    looks.add(tick("choosing.left", desk.look().leftHanded()), 0, 2, 2, 1);
    looks.add(tick("choosing.low-top", desk.look().lowStringOnTop()), 0, 3, 2, 1);
    looks.add(tick("choosing.close", desk.look().closeUp()), 0, 4, 2, 1);
    rest = row(what, pace, looks);
    Label legend = new Label();
    legend.getStyleClass().add("neck-legend");
    legend.setWrapText(true);
    // as wide as the form is without it
    legend.setPrefWidth(0);
    legend.setMaxWidth(Double.MAX_VALUE);
    legend.textProperty().bind(model.legend());
    form.getStyleClass().add("form");
    form.setFillWidth(true);
    form.getChildren().addAll(few, more, legend);
    more.selectedProperty().addListener(o -> unfold());
    listen();
    fill();
  }

  /** What is folded away is not there, for Tab neither. */
  private void unfold() {
    form.getChildren().remove(rest);
    if (more.isSelected()) {
      form.getChildren().add(form.getChildren().indexOf(more) + 1, rest);
    }
  }

  Region node() {
    return form;
  }

  private static FlowPane row(GridPane... groups) {
    FlowPane row = new Row(groups);
    row.getStyleClass().add("groups");
    row.setMinWidth(0);
    for (GridPane group : groups) {
      group.maxWidthProperty().bind(row.widthProperty());
    }
    return row;
  }

  private static GridPane group(String textKey) {
    GridPane group = new GridPane();
    group.getStyleClass().add("group");
    Label title = new Label(Texts.of(textKey));
    title.getStyleClass().add("group-title");
    group.add(title, 0, 0, 2, 1);
    return group;
  }

  private NumberSpinner number(
      String textKey, double least, double most, double step, int decimals) {
    return new NumberSpinner(textKey, least, most, step, decimals, desk::say);
  }

  private static void place(GridPane group, int row, String textKey, Node control) {
    Label label = new Label(Texts.of(textKey));
    label.setLabelFor(control);
    label.setMinWidth(Region.USE_PREF_SIZE);
    control.setAccessibleText(Texts.of(textKey));
    group.add(label, 0, row);
    group.add(control, 1, row);
  }

  private static String notesWords(int notes) {
    String number = Texts.number(notes);
    return notes == 3 ? Texts.of("choosing.notes.three", number) : number;
  }

  private ComboBox<LookModel.Label> labels() {
    ComboBox<LookModel.Label> labels =
        new ComboBox<>(FXCollections.observableList(Arrays.asList(LookModel.Label.values())));
    labels.setConverter(
        shown(
            label ->
                Texts.of("choosing.label." + label.name().toLowerCase(java.util.Locale.ROOT))));
    labels.valueProperty().bindBidirectional(desk.look().label());
    labels.setMaxWidth(Double.MAX_VALUE);
    return labels;
  }

  private static FlowPane buttons(DrillFiles files) {
    Button open = new Button(Texts.of("choosing.open"));
    open.setTooltip(new Tooltip(Texts.of("choosing.open.key")));
    open.setOnAction(e -> files.open());
    Button save = new Button(Texts.of("choosing.save"));
    save.setTooltip(new Tooltip(Texts.of("choosing.save.key")));
    save.setOnAction(e -> files.save());
    FlowPane buttons = new FlowPane(open, save);
    buttons.getStyleClass().add("ticks");
    // no wider than the fields above ask for
    buttons.setPrefWrapLength(0);
    return buttons;
  }

  private static CheckBox tick(String textKey, BooleanProperty property) {
    CheckBox box = new CheckBox(Texts.of(textKey));
    box.setMinWidth(Region.USE_PREF_SIZE);
    box.selectedProperty().bindBidirectional(property);
    return box;
  }

  /** Parts side by side, as wide as they like to be; where there is less room they wrap. */
  private static final class Row extends FlowPane {
    Row(Region... parts) {
      super(parts);
    }

    @Override
    protected double computePrefWidth(double height) {
      double wide = getInsets().getLeft() + getInsets().getRight();
      for (Node part : getChildren()) {
        wide += Math.ceil(part.prefWidth(USE_COMPUTED_SIZE)) + Math.ceil(getHgap());
      }
      return Math.ceil(wide);
    }
  }

  /** A key that cannot be read is said; the key stays as it was. */
  private final class KeyWords extends StringConverter<Key> {
    @Override
    public String toString(Key shown) {
      return shown == null ? "" : shown.toString();
    }

    @Override
    public Key fromString(String typed) {
      try {
        return Key.parse(typed);
      } catch (BadInput e) {
        desk.say(e.getMessage());
        return drill.drill().key();
      }
    }
  }

  private static <T> StringConverter<T> shown(Function<T, String> words) {
    return new StringConverter<>() {
      @Override
      public String toString(T value) {
        return value == null ? "" : words.apply(value);
      }

      @Override
      public T fromString(String text) {
        throw new UnsupportedOperationException("nothing is typed here");
      }
    };
  }

  private void listen() {
    drill.drillProperty().addListener(o -> fill());
    key.valueProperty().addListener((o, before, now) -> ask(now, drill::key));
    start.valueProperty().addListener((o, before, now) -> ask(now, drill::start));
    tuning.valueProperty().addListener((o, before, now) -> tuning(now));
    on(count, model::count);
    notes.valueProperty().addListener((o, before, now) -> ask(now, drill::notesPerBeat));
    on(rounds, drill::rounds);
    tempo.valueProperty().addListener((o, before, now) -> ask(now, drill::tempo));
  }

  private void on(NumberSpinner spinner, IntConsumer action) {
    spinner
        .valueProperty()
        .addListener((o, before, now) -> ask(now, value -> action.accept(value.intValue())));
  }

  /** A tuning that cannot be read stays in the field, to be mended. */
  private void tuning(String names) {
    if (!filling && names != null && drill.tuning(names)) {
      fill();
    }
  }

  private <T> void ask(T value, Consumer<T> action) {
    if (!filling && value != null) {
      action.accept(value);
      fill();
    }
  }

  private void fill() {
    PlayableDrill d = drill.drill();
    filling = true;
    try {
      if (!key.getItems().contains(d.key())) {
        key.getItems().add(d.key());
      }
      key.setValue(d.key());
      tuning.show(d.tuning());
      List<Integer> starts = drill.starts();
      start.setItems(FXCollections.observableList(starts));
      start.setValue(d.start());
      count.show(d.shapes().size());
      tempo.show(d.pulse().tempo());
      notes.setValue(d.pulse().notesPerBeat());
      rounds.show(d.rounds());
      feel.fill();
      if (!d.pulse().isPlain()) {
        more.setSelected(true);
      }
    } finally {
      filling = false;
    }
  }
}
