import { Component, type ReactNode } from 'react';

interface Props {
  readonly children: ReactNode;
}

/** A sheet that cannot be drawn says so; the frame, the other sheets and what was made stay. */
export class SheetBoundary extends Component<Props, { trouble: string | null }> {
  override state: { trouble: string | null } = { trouble: null };

  static getDerivedStateFromError(error: unknown): { trouble: string } {
    return { trouble: error instanceof Error ? error.message : String(error) };
  }

  override render(): ReactNode {
    const { trouble } = this.state;
    if (trouble === null) return this.props.children;
    return (
      <div className="waiting-words" role="alert">
        <h2>This sheet could not be drawn</h2>
        <p>
          What you made is kept. The reason given was: <q>{trouble}</q>
        </p>
        <p>Try another sheet, load the page again, or save a file and tell whoever looks after Lowshelf.</p>
        <button type="button" className="button" onClick={() => this.setState({ trouble: null })}>
          Try to draw it again
        </button>
      </div>
    );
  }
}
