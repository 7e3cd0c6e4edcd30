package neckway.desk;

import javafx.scene.control.Button;
import javafx.scene.control.Tooltip;

/**
 * A button with the name of the language that it chooses for the next start. What it says is in
 * that language, since whoever presses it reads that one.
 */
final class LanguageButton extends Button {
  private final Desk desk;

  LanguageButton(Desk desk) {
    this.desk = desk;
    getStyleClass().setAll("quiet");
    setMinWidth(USE_PREF_SIZE);
    setOnAction(e -> choose());
    name();
  }

  private Language other() {
    Language next = Language.chosen(desk.settings()).orElse(Texts.language());
    return next == Language.GERMAN ? Language.ENGLISH : Language.GERMAN;
  }

  private void name() {
    String key = "language." + other().code();
    setText(Texts.of(key));
    setAccessibleText(Texts.of(key + ".long"));
    setTooltip(new Tooltip(Texts.of(key + ".long")));
  }

  private void choose() {
    Language chosen = other();
    desk.settings().put(Language.SETTING, chosen.code());
    desk.say(Texts.of("language." + chosen.code() + ".next"));
    desk.keep();
    name();
  }
}
