import { TextLink } from '../ui/TextLink.tsx';
import { BlankTitleBlock } from './BlankTitleBlock.tsx';

/** The blank frame while a classroom is read from this device, or the reason why it could not be. */
export function WaitingSheet({ trouble }: { trouble: string | null }) {
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
                <p role="alert">{trouble}</p>
                <p>Nothing was changed. Load the page again, or go back to the start.</p>
                <TextLink onPress={() => location.assign('#')}>To the start</TextLink>
              </>
            )}
          </div>
          <BlankTitleBlock />
        </div>
      </main>
    </div>
  );
}
