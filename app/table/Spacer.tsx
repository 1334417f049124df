/** Empty height in a table in place of rows that are not drawn. */
export function Spacer({ height_px }: { readonly height_px: number }) {
  if (height_px <= 0) return null;
  return (
    <tbody aria-hidden="true">
      <tr style={{ height: height_px }} />
    </tbody>
  );
}
