export interface ReportOptions {
  /** IANA name of the zone the instants are shown in. */
  readonly zone: string;
  readonly version: string;
}
