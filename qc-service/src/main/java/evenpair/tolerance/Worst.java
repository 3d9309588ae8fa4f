package evenpair.tolerance;

/**
 * What a region comes to. Both are the same point under simple acceptance; with guard bands that
 * vary over frequency they may differ.
 *
 * @param nearest the point nearest to (or farthest beyond) its limit: the region's margin
 * @param deciding the point in the gravest state: the region's state, and the reason's point
 */
record Worst(Margin nearest, Margin deciding) {
  static final Worst NONE = new Worst(null, null);

  static Worst of(Margin only) {
    return new Worst(only, only);
  }

  Worst or(Margin next) {
    return new Worst(Margin.smaller(nearest, next), Margin.graver(deciding, next));
  }

  CheckState state() {
    return deciding.state();
  }

  RegionResult result(ReasonKind check, String region, Channel channel) {
    return nearest.result(check, region, channel).in(state());
  }

  RegionResult amount(ReasonKind check, String region) {
    return nearest.amount(check, region).in(state());
  }
}
