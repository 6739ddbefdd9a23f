/**
 * A page that broke while it was drawn says so and offers ways on, instead of leaving nothing. What happened is shown
 * to nobody; it can be copied for whoever mends it.
 */
import { Component, type ErrorInfo, type ReactNode } from 'react';
import styles from './broken-page.module.css';
import { Button } from './button.tsx';

/** What is said. */
export interface BrokenWords {
  readonly title: string;
  /** Whose fault it is, and what of one's work is kept. */
  readonly lead: string;
  readonly again: string;
  readonly home: string;
  readonly copy: string;
  readonly copied: string;
}

interface BrokenProps {
  readonly words: BrokenWords;
  /** Address of the place that the page begins at. */
  readonly home: string;
  readonly children: ReactNode;
}

interface BrokenState {
  readonly error: Error | null;
  /** The components that were being drawn, from the inside out. */
  readonly within: string;
  readonly isCopied: boolean;
}

/** A page of one's own, or word that it broke. */
export class BrokenPage extends Component<BrokenProps, BrokenState> {
  override readonly state: BrokenState = { error: null, within: '', isCopied: false };

  static getDerivedStateFromError(error: unknown): Partial<BrokenState> {
    return { error: error instanceof Error ? error : new Error(String(error)) };
  }

  override componentDidCatch(_: Error, { componentStack }: ErrorInfo): void {
    this.setState({ within: componentStack ?? '' });
  }

  readonly #copy = async (): Promise<void> => {
    const { error, within } = this.state;
    const about = [navigator.userAgent, window.location.pathname, error?.stack ?? '', within];
    await navigator.clipboard.writeText(about.join('\n'));
    this.setState({ isCopied: true });
  };

  readonly #goHome = (): void => {
    // Also where it differs in its fragment alone, which loads nothing by itself.
    window.history.replaceState(null, '', this.props.home);
    window.location.reload();
  };

  override render(): ReactNode {
    const { words, children } = this.props;
    if (!this.state.error) return children;
    return (
      <main className={styles.page} data-part="broken-page">
        <h1>{words.title}</h1>
        <p>{words.lead}</p>
        <div className={styles.ways}>
          <Button dress="strong" onClick={() => window.location.reload()}>
            {words.again}
          </Button>
          <Button onClick={this.#goHome}>{words.home}</Button>
          <Button onClick={() => void this.#copy()}>{words.copy}</Button>
        </div>
        <p role="status">{this.state.isCopied && words.copied}</p>
      </main>
    );
  }
}
