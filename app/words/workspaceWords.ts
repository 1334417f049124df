import type { OfferedWorkspace } from '../../lib/analysis/engine/workspace/WorkspaceOffer';
import { counted } from './counted';

/** What a workspace file holds, beside what is open here. */
export function offerSentence(name: string, { files, entries, own }: OfferedWorkspace): string {
  const holds = `${name} holds ${counted(files, 'file')} and ${counted(entries, 'entry', 'entries')} of the journal.`;
  return own.files + own.entries === 0
    ? `${holds} You have none of your own in this browser.`
    : `${holds} In this browser you have ${counted(own.files, 'file')} and ${counted(own.entries, 'entry', 'entries')}.`;
}

/** What merging would add and rename. */
export function mergeSentence({ merge }: OfferedWorkspace): string {
  const { added, renamed, conflicts } = merge;
  const adds =
    added.length === 0
      ? 'Merging adds no file'
      : `Merging adds ${counted(added.length, 'file')}: ${added.join(', ')}`;
  const names = renamed.map(({ name, as }) => `${name} comes in as ${as}`);
  const differs =
    conflicts.length === 0
      ? 'nothing was decided differently'
      : `${counted(conflicts.length, 'thing')} ${conflicts.length === 1 ? 'was' : 'were'} decided differently`;
  return `${[adds, ...names, differs].join('; ')}.`;
}
