package evenpair.print;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;

/** A picture on paper, drawn as vector graphics into the room that the layout gives it. */
public interface Drawing {
  /**
   * @param paper draws into the document; points (1/72 inch), y downwards. Text written through
   *     {@link PaperType} stays text
   * @param room nothing may be drawn outside it
   */
  void draw(Graphics2D paper, Rectangle2D room);
}
