export interface ReportOptions {
  /** IANA name of the zone the instants are shown in. */
  readonly zone: string;
  readonly version: string;
  /** Waited for before each picture of a report with many: a page lets the person go on meanwhile. */
  readonly pause?: () => Promise<void>;
}
