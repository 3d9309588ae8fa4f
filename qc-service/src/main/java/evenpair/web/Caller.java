package evenpair.web;

/** Kinds of callers that {@link AllowedFor} names. A person may hold several roles. */
public enum Caller {
  /** No sign-in asked for: the public. */
  ANYONE,
  /** A station's token, in a header or in the cookie that enrolment sets. */
  STATION,
  /** A person who measures. */
  OPERATOR,
  /** A person who answers for limits, stations and reports. */
  ENGINEER,
  /** A person who looks after people, stations' tokens and the service. */
  ADMINISTRATOR
}
