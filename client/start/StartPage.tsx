import { BlankTitleBlock } from '../frame/BlankTitleBlock.tsx';
import { useFrameDialogs } from '../frame/frameDialogs.ts';
import { TextLink } from '../ui/TextLink.tsx';
import { KeptHereList } from './KeptHereList.tsx';
import { openDemoRoom } from './openDemoRoom.ts';
import { StartDialogs } from './StartDialogs.tsx';

/** What there is to begin with when the address names no classroom. */
export function StartPage() {
  const dialogs = useFrameDialogs();
  return (
    <div className="desk">
      <header className="top-edge">
        <span className="tab alone">Lowshelf</span>
      </header>
      <main className="sheet">
        <div className="neat">
          <div className="start">
            <section aria-labelledby="start-title">
              <div className="statement">
                <h1 id="start-title">Lay out a room and its shelves, and see what that does to the children.</h1>
                <p>
                  Draw the room to scale, set shelves and trays, and read the answers beside the drawing: who gets through, who reaches
                  what, which step comes next, how many mats and how many children the floor takes.
                </p>
                <p>Everything is kept on this device at once. It works without a network and is shared with the team when there is one.</p>
              </div>
              <h2>Begin</h2>
              <ul className="start-list">
                <li>
                  <TextLink onPress={() => void openDemoRoom()}>Demo room</TextLink>
                  <span className="aside">an invented class, to try things out</span>
                </li>
                <li>
                  <TextLink onPress={() => dialogs.open('new')}>Empty sheet</TextLink>
                  <span className="aside">type length and width, draw the walls, or measure them one by one</span>
                </li>
                <li>
                  <TextLink onPress={() => dialogs.open('open')}>Open a file</TextLink>
                  <span className="aside">a classroom that somebody saved</span>
                </li>
              </ul>
            </section>
            <section className="start-here" aria-labelledby="here-title">
              <h2 id="here-title">Kept on this device</h2>
              <KeptHereList />
              <BlankTitleBlock />
            </section>
          </div>
        </div>
      </main>
      <StartDialogs />
    </div>
  );
}
