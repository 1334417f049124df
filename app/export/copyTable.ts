import type { PastedTable } from '../../lib/records/csv/pastedTable';

/**
 * Puts a table on the clipboard as text and as HTML; rejects where the browser does not let it.
 *
 * @throws Error if the browser refuses
 */
export async function copyTable({ text, html }: PastedTable): Promise<void> {
  if (typeof ClipboardItem !== 'undefined' && navigator.clipboard?.write !== undefined) {
    const parts = { 'text/plain': text, 'text/html': html };
    const blobs = Object.entries(parts).map(([type, part]) => [type, new Blob([part], { type })]);
    return navigator.clipboard.write([new ClipboardItem(Object.fromEntries(blobs))]);
  }
  if (!copiedByEvent({ text, html })) throw new Error('the browser refuses to write to the clipboard');
}

/** The way for pages that are not served securely, which have no clipboard of their own. */
function copiedByEvent({ text, html }: PastedTable): boolean {
  let taken = false;
  const take = (event: ClipboardEvent) => {
    event.preventDefault();
    event.clipboardData?.setData('text/plain', text);
    event.clipboardData?.setData('text/html', html);
    taken = event.clipboardData !== null;
  };
  document.addEventListener('copy', take);
  document.execCommand('copy');
  document.removeEventListener('copy', take);
  return taken;
}
