package evenpair.traceability;

import java.util.List;

/**
 * One source of a unit's story. Every component of this kind is asked; what they tell is put into
 * one order.
 */
interface StoryPart {
  /**
   * @param serial as stored
   * @param words renders texts, and names people for those who may see names
   * @return what this source knows of the unit, in any order
   */
  List<StoryEvent> of(String serial, StoryWords words);
}
