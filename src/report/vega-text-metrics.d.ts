import 'vega';

declare module 'vega' {
  /** Widths of texts; missing in the package's own types. */
  export const textMetrics: { canvas(use: boolean): void };
}
