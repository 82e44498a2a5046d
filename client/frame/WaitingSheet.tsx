import { TextLink } from '../ui/TextLink.tsx';
import { BlankTitleBlock } from './BlankTitleBlock.tsx';

interface Props {
  /** Why it could not be opened; null: it is being read. */
  readonly trouble: { readonly words: string; readonly retry: () => void } | null;
}

/** The blank frame while a classroom is read from this device, or the reason why it could not be. */
export function WaitingSheet({ trouble }: Props) {
  return (
    <div className="desk">
      <main className="sheet waiting">
        <div className="neat">
          <div className="waiting-words">
            {trouble === null ? (
              <p role="status">The sheet is being laid out …</p>
            ) : (
              <>
                <h1>This classroom could not be opened</h1>
                <p role="alert">{trouble.words}</p>
                <p>Nothing was changed. It is tried again by itself from time to time, and as soon as there is a network again.</p>
                <div className="verbs">
                  <TextLink onPress={trouble.retry}>Try now</TextLink>
                  <TextLink onPress={() => location.assign('#')}>To the start</TextLink>
                </div>
              </>
            )}
          </div>
          <BlankTitleBlock />
        </div>
      </main>
    </div>
  );
}
