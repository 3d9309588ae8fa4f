package evenpair.inspections;

/** Examples for the description at {@code /v3/api-docs}; invented. */
final class InspectionExamples {
  static final String FAILED =
      """
      {"id": "019ab8c6-2f10-7d3e-9b1c-5a4d7c1e0f22", "serial": "SG2-004217", "batch": "SW-2647", "product": "sedge-2",
       "productName": "Sedge 2", "maker": "Saltmarsh Works", "tuning": "plain", "station": "bench-1",
       "occasion": "production", "state": "closed", "verdict": "FAIL", "conditional": false,
       "lastAttempt": "FAIL", "next": "done",
       "limitSet": {"version": 3, "digest": "8c1f…"}, "earSimulator": "IEC 60318-4",
       "startedAt": "2026-11-25T07:00:00Z", "closedAt": "2026-11-25T07:00:01Z", "abandonedBecause": null,
       "softwareVersion": "0.1.0", "seatings": {"valid": 1, "wanted": 1, "tries": 1, "allowed": 3, "spreadDb": [], "depthTold": true},
       "reasons": [{"kind": "window", "channel": "right", "region": "treble", "frequencyHz": 8483.4,
         "measuredDb": 4.3, "limitDb": 3.0, "alsoRegions": [], "otherTuning": null,
         "text": "Right earpiece is 1.3 dB above its treble window at 8.5 kHz (+4.3 dB, allowed +3.0 dB)."}],
       "regions": [{"name": "treble", "check": "window", "channel": "right", "judged": true, "marginDb": -1.3,
         "atHz": 8483.4, "measuredDb": 4.3, "limitDb": 3.0, "state": "fail", "unit": "dB", "guardDb": null}],
       "attempts": [{"number": 1, "seating": 1, "outcome": "FAIL", "station": "bench-1",
         "measuredAt": "2026-11-25T07:00:00Z", "receivedAt": "2026-11-25T07:00:01Z", "stimulus": "sweep-48000",
         "left": {"sha256": "5d2c…", "bytes": 357176}, "right": {"sha256": "91af…", "bytes": 357176},
         "idleLeftSha256": null, "idleRightSha256": null, "reasons": []}],
       "unit": {"verdict": "FAIL", "passed": [], "missing": ["warm"], "failed": ["plain"]},
       "links": {"self": "/api/inspections/019ab8c6-2f10-7d3e-9b1c-5a4d7c1e0f22",
         "curves": "/api/inspections/019ab8c6-2f10-7d3e-9b1c-5a4d7c1e0f22/curves",
         "certificate": "/api/inspections/019ab8c6-2f10-7d3e-9b1c-5a4d7c1e0f22/certificate",
         "unit": "/api/units/SG2-004217"}}
      """;

  static final String ALREADY_JUDGED =
      """
      {"type": "/problems/already-judged", "title": "Already judged", "status": 409,
       "detail": "Unit 'SG2-004217' was judged PASS in tuning 'plain' at 2026-11-25T07:00:01Z; judge it again with occasion rework, audit or return.",
       "part": "inspection", "field": "occasion", "choices": ["rework", "audit", "return"], "verdict": "PASS"}
      """;

  static final String UNREADABLE =
      """
      {"type": "/problems/unreadable-capture", "title": "Unreadable capture", "status": 422,
       "detail": "The part 'left' cannot be decoded: The file is not a WAV file: it begins with \\"frequency_hz\\".",
       "part": "left", "place": "first 12 bytes", "expected": "RIFF, a size, WAVE"}
      """;

  static final String ABANDONMENT =
      """
      {"operator": "op-17", "reason": "station-fault"}
      """;

  private InspectionExamples() {}
}
