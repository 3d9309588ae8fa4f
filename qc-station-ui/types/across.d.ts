// The JSON of a unit among others, and of its story, as the screens read it.
declare namespace Api {
  interface AcrossMeasure {
    region: string; what: string; value: number | null; percentile: number | null; standsApart: boolean; units: number;
    median: number | null; batchMedian: number | null; othersMedian: number | null;
  }
  interface AcrossPoint { serial: string; inspection: string; at: string; batch: string; station: string; verdict: string; shipped: boolean; values: Values }
  interface AcrossUnit {
    serial: string; inspection: string; batch: string; at: string; verdict: string; db: number; shipped: { dispatch: string; reference: string; shippedAt: string }[];
  }
  interface UnitAcross {
    serial: string; product: string; tuning: string; inspection: string; limitSet: number; answer: string; units: number; of: number; batches: number;
    measures: AcrossMeasure[]; points: AcrossPoint[]; alikeInShape: AcrossUnit[]; alikeInDifference: AcrossUnit[]; asUneven: AcrossUnit[]; region: string | null; notes: string[];
  }
  interface StoryFact { text: string; at: string | null; until: string | null; held: boolean }
  interface StoryEvent {
    at: string; kind: string; state: string | null; text: string; place: string | null; who: { role: string; name: string | null } | null; facts: StoryFact[]; link: string | null;
  }
  interface UnitStory { serial: string; product: string; batch: string; verdict: string; names: boolean; events: StoryEvent[] }
}
