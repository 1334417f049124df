interface TakeBackButtonProps {
  readonly ids: readonly string[];
  /** What is taken back, for those who hear the button alone. */
  readonly of: string;
  readonly busy: boolean;
  readonly onTakeBack: (ids: readonly string[]) => void;
}

/** Takes decisions in force back: what they settled is open again. */
export function TakeBackButton({ ids, of, busy, onTakeBack }: TakeBackButtonProps) {
  return (
    <button type="button" disabled={busy} onClick={() => onTakeBack(ids)}>
      Take back
      <span className="visuallyHidden">{` ${of}`}</span>
    </button>
  );
}
