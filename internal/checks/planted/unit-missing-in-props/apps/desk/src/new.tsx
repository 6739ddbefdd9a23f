interface BarProps {
  /** How it looks. */
  readonly wide: number;
}

/** A bar. */
export function Bar({ wide }: BarProps) {
  return <i>{wide}</i>;
}
