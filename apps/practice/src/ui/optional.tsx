/** Something that the page can do without: where it cannot be loaded or breaks, the rest goes on. */
import { Component, type ReactNode } from 'react';

interface OptionalProps {
  readonly children: ReactNode;
}

/** Shows what is inside, or nothing once it has failed. */
export class Optional extends Component<OptionalProps, { readonly failed: boolean }> {
  override readonly state = { failed: false };

  static getDerivedStateFromError(): { readonly failed: boolean } {
    return { failed: true };
  }

  override render(): ReactNode {
    return this.state.failed ? null : this.props.children;
  }
}
