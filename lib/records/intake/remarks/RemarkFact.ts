/** What a remark seems to say of a meter or of where a unit sat: proposed, to be asked, never taken as true by itself. */
export type RemarkFact =
  | {
      readonly kind: 'meter replaced';
      readonly date: RemarkDate | null;
      /** Last reading of the old meter, h; null if the remark does not say it. */
      readonly lastHours: number | null;
      /** First reading of the new meter, h: 0 unless said. */
      readonly newMeterHours: number;
      readonly text: string;
    }
  | {
      readonly kind: 'meter corrected';
      readonly date: RemarkDate | null;
      /** Hours to add to later readings, h. */
      readonly hours: number | null;
      readonly text: string;
    }
  | {
      readonly kind: 'unit fitted';
      readonly date: RemarkDate | null;
      /** Reading of the engine's meter when the unit was fitted, h. */
      readonly engineHours: number | null;
      /** Hours that the unit came with, h. */
      readonly unitHours: number | null;
      /** Engine that it came from, as the records name it. */
      readonly fromEngine: string | null;
      readonly text: string;
    };

/** A day in a remark, ISO; `otherwise` is the other day that the same text may mean ('03/04/2016'). */
export interface RemarkDate {
  readonly iso: string;
  readonly otherwise: string | null;
}
