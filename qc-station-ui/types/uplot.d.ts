// As much of the plotting library as the screens use.
declare class uPlot {
  constructor(options: Record<string, unknown>, data: (number | null)[][], target: HTMLElement);
  readonly over: HTMLElement;
  setCursor(at: { left: number; top: number }): void;
  valToPos(value: number, scale: string, canvasPixels?: boolean): number;
  posToIdx(left: number): number;
  posToVal(at: number, scale: string): number;
  redraw(rebuildPaths?: boolean, recalculateAxes?: boolean): void;
  destroy(): void;
}
export default uPlot;
