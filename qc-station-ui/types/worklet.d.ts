// What the audio thread of a browser offers to a worklet, as far as ours uses it (Web Audio API 1.1).
declare class AudioWorkletProcessor {
  readonly port: MessagePort
}
declare function registerProcessor(name: string, processor: new () => AudioWorkletProcessor): void
declare const currentFrame: number
declare const sampleRate: number
