package evenpair.print;

import java.util.Collections;
import java.util.Enumeration;
import java.util.Map;
import java.util.ResourceBundle;

/** Lets a page layout take its words from the one table of texts. */
final class TextBundle extends ResourceBundle {
  private final Map<String, String> texts;

  TextBundle(Map<String, String> texts) {
    this.texts = texts;
  }

  @Override
  protected Object handleGetObject(String key) {
    return texts.get(key);
  }

  @Override
  public Enumeration<String> getKeys() {
    return Collections.enumeration(texts.keySet());
  }
}
