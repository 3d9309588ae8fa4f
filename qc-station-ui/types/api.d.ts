// The JSON of the HTTP API as the screens read it.
declare namespace Api {
  type Values = (number | null)[];
  interface Page<T> { items: T[]; next?: string | null }
  interface ProblemDocument {
    type?: string; title?: string; status: number; detail?: string; part?: string; field?: string;
    place?: unknown; expected?: unknown; choices?: unknown; stations?: unknown;
    problems?: { line: number; column: number; path: string; found: string; expected: string }[];
  }
  type Role = "operator" | "engineer" | "administrator";
  interface Session { person: { person: string; name: string; roles: Role[]; by: "password" | "badge" | null } | null; station: string | null; idleSeconds: number }
  interface Person { person: string; name: string; badge: string | null; roles: Role[]; account: boolean; password: boolean; active: boolean; erasable: boolean }
  interface StationToken { id: string; name: string; madeAt: string; lastUsedAt: string | null; revokedAt: string | null; valid: boolean }
  interface LiveEvent { id: string; serial: string; station: string; batch: string; product: string; tuning: string; verdict: string | null; lastAttempt: string | null }
  interface Need { what: string; channel?: string | null; why: string; text: string }
  interface Block { cause?: string; channel?: string | null; since?: string | null; text: string }
  interface Timed { measuredAt: string; validUntil: string; valid: boolean }
  interface Change { db: number | null; state: string; text?: string | null }
  interface Microphone extends Timed {
    earSimulator: string; earSimulatorSerial: string; calibratorSerial: string; fullScaleLevelDb: number; statedLevelDb: number; statedFrequencyHz: number;
    calibratorUncertaintyDb?: number | null; tone: { amplitudeDbfs: number; frequencyHz: number; distortionPercent: number; driftDb: number }; change: Change;
  }
  interface Output extends Timed { fullScaleVoltsRms: number; toneDbfs: number; frequencyHz: number; readingMvRms: number; meterSerial: string; change: Change }
  interface Correction extends Timed { version: number; referenceUnit: string; scatterDb: number; meanDb: number; frequencyHz?: number[]; leftMinusRightDb?: Values; uncertaintyDb?: Values }
  interface IdleFloor extends Timed { leftDba: number; rightDba: number }
  interface Station {
    station?: string; name: string; note?: string | null; state?: string; needs?: Need[]; blocks?: Block[] | null;
    microphones?: { left?: Microphone | null; right?: Microphone | null }; output?: Output | null; correction?: Correction | null; idleFloor?: IdleFloor | null;
    verifications?: { product: string; tuning: string; passed: boolean; measuredAt: string; validUntil: string; valid: boolean }[] | null;
  }
  interface ReferenceUnit { serial: string; product: string; tuning: string; valid: boolean; validUntil: string }
  interface VerificationRegion { channel: string; region: string; judged: boolean; passed: boolean; deviationDb: number | null }
  interface Verification extends Timed { product: string; tuning: string; referenceUnit: string; passed: boolean; limitDb: number; regions: VerificationRegion[]; cleared?: { reason: string; engineer?: string | null } | null }
  interface ControlLimits { centreDb: number; lowerDb: number; upperDb: number }
  interface TrendPoint { measuredAt: string; deviationDb: number; signals?: boolean | null }
  interface Trend { channel: string; region: string; limitDb: number; chart?: ControlLimits | null; note?: string | null; points: TrendPoint[] }
  interface Verifications { items: Verification[]; trends: Trend[]; method: string }
  interface Drift {
    what: string; channel?: string | null; unit: string; limitDb: number; chart?: ControlLimits | null; note?: string | null;
    points: { measuredAt: string; levelDb: number; changeDb: number | null; changed: boolean }[];
  }
  interface Drifts { items: Drift[]; method: string }
  interface GaugeResult { pooled: boolean; repeatDb: number; appraiserDb: number; interactionDb: number; grrDb: number; partDb: number; grrPercent: number | null; ndc: number | null }
  interface GaugeRow { region?: string | null; quantity: string; result?: GaugeResult | null }
  interface GaugeStudy {
    id: string; product: string; tuning: string; appraiserKind: string; parts: string[]; appraisers: string[]; seatings: number; state: string; measured: number; wanted: number;
    missing?: { part: string; appraiser: string; seating: number }[] | null; validUntil?: string | null; analysis?: { method: string; regions: GaugeRow[]; numbers: GaugeRow[] } | null;
  }
  interface BudgetNumber { repeatDb: number; reproducibilityDb: number; calibratorDb: number; correctionDb: number; combinedDb: number; expandedDb: number }
  interface BudgetCurve { repeatDb: Values; reproducibilityDb: Values; correctionDb: Values; combinedDb: Values; expandedDb: Values }
  interface Budget {
    seatings: number; method: string; frequencyHz: number[]; level: BudgetNumber; balance: BudgetNumber; deviation: BudgetCurve; match: BudgetCurve;
    regions: { region: string; deviationExpandedDb: number | null; deviationAtHz: number | null; matchExpandedDb: number | null; matchAtHz: number | null }[];
  }
  interface HealthStation {
    station: string; state: "ready" | "problem" | "blocked"; block: { cause: string; since: string; text: string } | null;
    verdicts: { inspection: string; serial: string; tuning: string; verdict: string; at: string }[];
    firstPass: { passed: number; of: number; share: number | null; wilson: [number, number] | null; minutes: number };
    mountings: { attempts: number; reseats: number; minutes: number; operators?: { operator: string | null; attempts: number; reseats: number }[] };
    calibrations: { kind: string; validUntil: string | null; secondsLeft: number | null }[];
    verifications: { product: string; tuning: string; state: "passed" | "failed" | "expired" | "missing"; validUntil: string | null }[];
    held: { count: number; oldestAt: string | null; reportedAt: string } | null; heardAt: string | null;
  }
  interface HealthService {
    version: string; hearsOtherProcesses: boolean;
    database: { latencyMs: number; ledger: { unsealed: number; oldestUnsealedAt: string | null; lastBlockAt: string | null }; events: { unfinished: number; oldestAt: string | null }; oneRole: boolean } | null;
    disk: { freeBytes: number; totalBytes: number; warnBelowBytes: number; low: boolean } | null;
    dropFolders: { station: string; watching: boolean; waiting: number; taken: number; refused: number; lastTakenAt: string | null; problem: string | null }[];
  }
  interface PlantHealth { at: string; stations: HealthStation[]; service: HealthService; method: string }
  interface Product { product: string; name: string; serialPattern?: string | null; tunings: { tuning: string; required: boolean; activeLimitSet: number | null }[] }
  interface Reason {
    kind: string; channel: "left" | "right" | null; region: string | null; frequencyHz: number | null;
    measuredDb: number | null; limitDb: number | null; alsoRegions?: string[] | null; text: string;
  }
  interface RegionResult {
    name: string | null; check: string; channel: "left" | "right" | null; judged: boolean;
    marginDb: number | null; atHz: number | null; measuredDb: number | null; limitDb: number | null; state?: string | null; unit?: string | null;
  }
  interface Tone { hz: number; levelDb: number; usbFrame: boolean }
  interface IdleNoise { dba: number | null; floorDba?: number | null; tones?: Tone[] | null }
  interface SeatingSpread { region: string; channel: "left" | "right"; db: number; atHz: number }
  interface Capture { sha256: string; bytes?: number | null }
  interface Attempt { number: number; seating: number; outcome: string; measuredAt: string; left?: Capture | null; right?: Capture | null; reasons?: Reason[] }
  interface Inspection {
    id: string; serial: string; batch: string; product: string; productName?: string; tuning: string; station: string; occasion: string;
    state: "open" | "closed" | "abandoned"; verdict: string | null; lastAttempt: string | null; next: string;
    limitSet?: { version: number; digest?: string | null }; earSimulator?: string; startedAt: string; closedAt: string | null; softwareVersion?: string;
    seatings?: { valid: number; wanted: number; tries: number; allowed: number; spreadDb?: SeatingSpread[] | null; depthTold?: boolean };
    conditional?: boolean | null; idleNoise?: { left?: IdleNoise | null; right?: IdleNoise | null } | null; 
    reasons: Reason[]; regions?: RegionResult[]; attempts?: Attempt[];
    unit?: { verdict: string; passed: string[]; missing: string[]; failed: string[] };
    links?: { certificate?: string | null };
  }
  interface NewAttempt {
    serial: string; batch: string; product: string; tuning: string; station: string; operator: string; seating: number;
    occasion?: string; measuredAt?: string; stimulus?: string;
  }
  interface ChannelCurve {
    levelDb: Values; alignmentDb?: number | null; thdPercent?: Values | null; harmonicsDb?: Record<string, Values | null> | null;
    harmonicFloorsDb?: Record<string, Values | null> | null; highOrderDb?: Values | null; highOrderFloorDb?: Values | null;
  }
  interface Region { name: string; fromHz: number; toHz: number }
  interface Curves {
    frequencyHz: number[]; left?: ChannelCurve | null; right?: ChannelCurve | null; golden: { levelDb: Values };
    windows: { lowerDb: Values; upperDb: Values }; difference?: { levelDb: Values; limitDb?: Values | null } | null;
    regions: Region[]; earSimulator?: { type: string; specifiedFromHz: number; specifiedToHz: number } | null;
  }
  interface Unit {
    serial: string; product: string; productName?: string; batch: string; occasion?: string; verdict: string;
    tunings: { tuning: string; required: boolean; verdict: string | null; inspection: string | null; problem?: string | null; soundsLike?: string | null; problemText?: string | null }[]; inspections: Inspection[];
  }
  interface BatchSummary { batch: string; product: string; productName?: string; tunings: string[]; limitSets: number[]; units: number; lastAt: string }
  interface Spread { n: number; mean?: Values; sd?: Values; percentiles: Record<string, Values | null | undefined> }
  interface ChannelStatistics { n: number; level?: Omit<Spread, "n"> | null; deviation?: Omit<Spread, "n"> | null }
  interface RankedReason { kind: string; channel?: string | null; region?: string | null; units: number; share: number; text?: string | null; failed?: { inspection: string; serial: string; verdict: string }[] }
  interface Yield { passed: number; of: number; share: number; confidence: number; wilson?: [number, number] | null; clopperPearson?: [number, number] | null; method?: string | null }
  interface Missing { lack: string; have: number; need: number; text: string }
  interface Index { value: number; interval: [number, number]; atLeast: number }
  interface CapabilityRow {
    quantity: string; region: string | null; channel: string | null; name: string; n: number; lowerLimitDb: number | null; upperLimitDb: number | null; meanDb: number | null;
    sdWithinDb: number | null; sdOverallDb: number | null; cp: Index | null; cpk: Index | null; pp: Index | null; ppk: Index | null; normality: { aSquared: number; p: number; rejected: boolean } | null;
    alternative: { method: string; ppk: number | null; atLeast: number | null; outside: number; text: string } | null; quoted: string | null; missing: Missing | null;
  }
  interface Capabilities { rows: CapabilityRow[]; method: string; notes: string[] }
  interface UnitLink { inspection: string; serial: string; verdict: string | null }
  interface Charts {
    quantity: string; region: string | null; channel: string | null; name: string; unit: string; kind: string; points: { at: string; units: UnitLink[] }[];
    panels: { title: string; lines: Values[]; centre: number; lower: Values | null; upper: Values | null }[]; signals: { panel: number; rule: string; text: string; points: number[] }[];
    method: string; notes: string[]; missing: Missing | null; choices: { quantity: string; region: string | null; channel: string | null; name: string }[];
  }
  interface Component { share: number; leftDb: number[]; rightDb: number[]; text: string }
  interface ScoredUnit extends UnitLink { at: string; member: boolean; tSquared: number | null; signals: boolean; scores: number[]; restDb: number | null; mostBy: number | null; mostShare: number | null }
  interface Components {
    from: number; frequencyHz: number[]; components: Component[]; tSquared: { components: number; alpha: number; memberLimit: number; otherLimit: number }; units: ScoredUnit[];
    method: string; notes: string[]; missing: Missing | null;
  }
  interface StationRow {
    name: string; f: number | null; p: number | null; stations: { station: string; n: number; meanDb: number | null; sdDb: number | null }[];
    differences: { first: string; second: string; differenceDb: number; interval: [number, number]; clear: boolean; text: string }[]; missing: Missing | null;
  }
  interface StationComparison { rows: StationRow[]; method: string; notes: string[]; missing: Missing | null }
  interface Statistics {
    batch: string; product: string; tuning: string; limitSets: number[]; units: { inspected: number; passed: number; failed: number };
    yield: Yield; finalYield?: Yield | null; stations?: string[]; links?: Record<string, string>;
    reasons: RankedReason[]; frequencyHz: number[]; window?: { lowerDb: Values | null; upperDb: Values | null } | null; matchLimitDb?: Values | null;
    regions: Region[]; left?: ChannelStatistics | null; right?: ChannelStatistics | null; difference?: Spread | null; notes?: string[] | null;
  }
  interface GoldenEarpiece { odd: boolean; typical: number | null; farthest: number | null; farthestAtHz: number | null; farthestDb: number | null; deviationDb: Values }
  interface GoldenUnit { inspection: string; serial: string; leftOut: boolean; odd: boolean; why: string[]; left?: GoldenEarpiece | null; right?: GoldenEarpiece | null }
  interface Comparison { which: string; with: string; frequencyHz: number[]; differenceDb: Values; offsetDb: number | null; regions: (Region & { largestDb: number; atHz: number; text: string })[] }
  interface GoldenBuild {
    units: number; curves: number; frequencyHz: number[]; levelDb: Values; sdDb: Values; madDb: Values; members: GoldenUnit[];
    againstActive?: Comparison | null; againstExpected?: Comparison | null; method: string[]; notes: string[]; saved?: { version: number; name: string } | null;
  }
  interface GoldenVersion { version: number; name?: string | null; state: string; active?: boolean; notice?: string | null; madeAt?: string | null; built?: { units: number; leftOut: string[] } | null }
  interface UnitCurves { inspection: string; serial: string; verdict: string; leftDeviationDb: Values | null; rightDeviationDb: Values | null; differenceDb: Values | null }
  interface BatchCurves { frequencyHz: number[]; units: UnitCurves[]; shown: number; of: number }
  interface Job { id: string; kind: string; state: "waiting" | "running" | "done" | "failed"; done: number; total: number | null; problem: string | null; result: string | null }
  interface SealReport {
    intact: boolean; blocks: number; entries: number; waiting: number; witnessedHeads: number; rows: number; files: number; entriesWithoutEvidence: number;
    head: string | null; keyId: string; firstFailure: { block: number | null; entry: string | null; problem: string } | null; note: string;
  }
  interface Rejudgement {
    id: string; softwareVersion: string; startedAt: string; until: string; nightly: boolean; inspections: number; bitForBit: number; differing: number;
    differences: { inspection: string; serial: string; softwareVersion: string; largestDb: number | null; verdictThen: string; verdictNow: string | null; problem: string | null }[];
  }
  interface OutsideRegion {
    name: string; fromHz: number; toHz: number; theirsDb: number | null; oursDb: number | null; theirExpandedDb: number | null; ourExpandedDb: number | null;
    en: number | null; limitDb: number | null; percentile: number | null; outcome: string; text: string;
  }
  interface OutsideReport {
    id: string | null; serial: string; product: string; tuning: string; batch: string; inspection: string; measuredAt: string; station: string; limitSetVersion: number; receivedAt: string;
    source: { name: string | null; publishedOn: string | null } | null; outcome: string; swapped: boolean; averageOnly: boolean; coverage: number; shapeCompared: boolean;
    headline: string; conclusion: string[]; inTheBatch: string | null; regions: OutsideRegion[]; assumptions: string[]; questions: string[];
    curves: { frequencyHz: number[]; oursDb: (number | null)[]; ourExpandedDb: (number | null)[]; theirsDb: (number | null)[] | null; theirExpandedDb: (number | null)[]; limitDb: (number | null)[] };
    links: Record<string, string>;
  }
}
