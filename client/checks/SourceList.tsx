import { sourceText } from '#model/standards/sources.ts';

/** The sources that the findings above refer to by letter. */
export function SourceList({ letters }: { letters: ReadonlyMap<string, string> }) {
  if (letters.size === 0) return null;
  return (
    <div className="sources aside">
      <h3 className="only-heard">Sources</h3>
      <ul>
        {[...letters].map(([source, letter]) => (
          <li key={source}>
            <b>{letter}</b> {sourceText(source)}
          </li>
        ))}
      </ul>
      <p>Figures help to plan. Your local authority decides.</p>
    </div>
  );
}
