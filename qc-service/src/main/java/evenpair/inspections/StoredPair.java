package evenpair.inspections;

import evenpair.tolerance.Channel;

/** Both channels of one attempt as stored. */
record StoredPair(StoredChannel left, StoredChannel right) {
  StoredChannel of(Channel channel) {
    return channel == Channel.LEFT ? left : right;
  }
}
