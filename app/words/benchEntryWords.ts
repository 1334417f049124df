import type { EntryFault } from '../../lib/analysis/bench/types';
import { formatDate, formatHours } from '../../lib/charts/format';

/** What date, hours or readings lack, or what is asked about them, in a sentence. */
export function entryFaultWords(fault: EntryFault): string {
  switch (fault.what) {
    case 'no date':
      return 'The day of the overhaul is needed.';
    case 'no hours':
      return fault.reason === null
        ? 'The hours on the unit are needed.'
        : `The hours cannot be read: ${fault.reason}. Type the running hours as one number.`;
    case 'no reading':
      return 'No reading is typed yet.';
    case 'same day':
      return `An overhaul of this unit on ${formatDate(fault.date)} is on record already: is this another one?`;
    case 'before the last':
      return `The last overhaul on record is later, on ${formatDate(fault.date)}: is the date right?`;
    case 'fewer hours':
      return `The last overhaul on record was at ${formatHours(fault.hours)}, and hours that fall are held when they are read: check the meter.`;
    case 'more than the days hold':
      return 'More hours than the days since the last overhaul hold: check meter and date.';
    case 'far from expected':
      return `About ${formatHours(fault.hours)} are expected on that day: check meter and date.`;
  }
}
