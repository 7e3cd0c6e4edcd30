package neckway.desk;

import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import neckway.file.SettingsFile;
import neckway.neck.BadInput;

/** What the views share: the drill, the look, the settings, the way from view to view. */
public final class Desk {
  private final SettingsFile settings;
  private final DrillModel drill = new DrillModel();
  private final LookModel look;
  private final Router router = new Router();
  private final ReadOnlyStringWrapper notice = new ReadOnlyStringWrapper(this, "notice", "");

  public Desk(SettingsFile settings) {
    this.settings = settings;
    look = new LookModel(settings);
    settings.drill("drill").ifPresent(drill::use);
    settings.complaint().ifPresent(this::say);
  }

  public SettingsFile settings() {
    return settings;
  }

  public DrillModel drill() {
    return drill;
  }

  public LookModel look() {
    return look;
  }

  public Router router() {
    return router;
  }

  /** One line for the player at the foot of the window; empty for none. */
  public ReadOnlyStringProperty notice() {
    return notice.getReadOnlyProperty();
  }

  /** Puts a line at the foot of the window in place of the one before. */
  public void say(String line) {
    notice.set(line);
  }

  /** Keeps the drill, the look and everything else put in the settings; says where it cannot. */
  public void keep() {
    settings.put("drill", drill.drill());
    look.put(settings);
    try {
      settings.save();
    } catch (BadInput e) {
      say(e.getMessage());
    }
  }
}
