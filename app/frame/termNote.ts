import type { TermName } from '../words/terms';

const gap_px = 6;

/** Names of the note of a term in the page, and of the sentences inside it. */
export function noteIds(name: TermName): { readonly note: string; readonly says: string } {
  return { note: `note-${name}`, says: `says-${name}` };
}

/** Puts a note under what it explains, or above where there is no room, and never over the edge of the window. */
function place(note: HTMLElement, beside: Element): void {
  const at = beside.getBoundingClientRect();
  const left_px = Math.max(gap_px, Math.min(at.left, window.innerWidth - note.offsetWidth - gap_px));
  const fitsBelow = at.bottom + gap_px + note.offsetHeight <= window.innerHeight;
  const top_px = fitsBelow ? at.bottom + gap_px : Math.max(gap_px, at.top - gap_px - note.offsetHeight);
  note.style.left = `${left_px}px`;
  note.style.top = `${top_px}px`;
}

let following: AbortController | null = null;

/** Shows the note of a term beside what it explains, and keeps it there while the page is scrolled. */
export function showNoteOf(name: TermName, beside: HTMLElement): void {
  const note = document.getElementById(noteIds(name).note);
  if (note === null) return;
  following?.abort();
  following = new AbortController();
  const { signal } = following;
  const follow = () => place(note, beside);
  // The source tells the browser where the note lies in the order of the Tab key: right behind its word.
  note.togglePopover({ force: true, source: beside });
  follow();
  window.addEventListener('scroll', follow, { capture: true, passive: true, signal });
  window.addEventListener('resize', follow, { signal });
}

/** Hides the note of a term. */
export function hideNoteOf(name: TermName): void {
  following?.abort();
  document.getElementById(noteIds(name).note)?.togglePopover(false);
}

/** Whether something of the page is in the note of a term. */
export function isInNoteOf(name: TermName, target: Element | null): boolean {
  return document.getElementById(noteIds(name).note)?.contains(target) ?? false;
}
