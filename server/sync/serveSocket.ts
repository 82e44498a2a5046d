import * as decoding from 'lib0/decoding';
import type { WebSocket } from 'ws';
import { closes, messages } from '#model/document/wire.ts';
import type { Admitted } from '../access/door.ts';
import { createPeer, type Peer } from './peer.ts';
import type { Room } from './room.ts';
import { type Rooms, sayError } from './rooms.ts';
import { createThrottle, type Throttle } from './throttle.ts';

/** Bytes of one message of presence: a name, a place, what is in hand. */
const LARGEST_PRESENCE = 64 * 1024;
const MESSAGES = { perSecond: 200, burst: 1_000 };
/** ms */
const LONGEST_REST = 5_000;
/** Bytes of a remark of one who may only look, and how many may come: nobody writes faster. */
const LARGEST_REMARK = 8 * 1024;
const REMARKS = { perSecond: 0.5, burst: 30 };
const BYTES = { perSecond: 4 * 1024 * 1024, burst: 64 * 1024 * 1024 };

/** Speaks with one page until it goes. Messages that come before the room is open wait. */
export function serveSocket(socket: WebSocket, admitted: Admitted, rooms: Rooms, log: (text: string) => void): void {
  const { classroom, mayChange } = admitted;
  const peer = createPeer(socket, mayChange);
  const throttles = [createThrottle(MESSAGES), createThrottle(BYTES)] as const;
  const rest = createRest(socket);
  let room: Room | null = null;
  let isGone = false;

  socket.pause();
  socket.on('error', () => undefined); // The close that follows says it; without a listener the process would end.
  socket.on('close', () => {
    isGone = true;
    if (!room) return;
    room.leave(peer);
    rooms.left(classroom, room);
  });
  socket.on('message', (data: unknown, isBinary: boolean) => {
    if (!room?.isSound()) return;
    const bytes = isBinary && data instanceof Uint8Array ? data : null;
    const wait = Math.max(throttles[0].take(1), throttles[1].take(bytes?.byteLength ?? 0));
    rest(wait);
    try {
      if (!bytes) throw new Error('not binary');
      handle(room, peer, bytes, rest);
    } catch {
      peer.close(closes.malformed, 'could not be read');
    }
  });

  const turnAway = (code: number, reason: string): void => {
    socket.resume();
    peer.close(code, reason);
  };
  rooms.enter(classroom).then(
    (entered) => {
      if (isGone) {
        if (entered) rooms.left(classroom, entered);
      } else if (!entered) turnAway(closes.cannotSave, 'could not save just now');
      else if (!entered.isSound()) turnAway(closes.tryLater, 'closed just now');
      else {
        room = entered;
        room.join(peer);
        socket.resume();
      }
    },
    (error: unknown) => {
      log(`Could not open a classroom: ${sayError(error)}.`);
      turnAway(closes.cannotSave, 'could not be read');
    },
  );
}

/** One for all who look at a classroom: coming again brings no more. */
const remarks = new WeakMap<Room, Throttle>();
function remarksOf(room: Room): Throttle {
  const known = remarks.get(room) ?? createThrottle(REMARKS);
  remarks.set(room, known);
  return known;
}

/** Stops reading for as long as was asked last: messages that were read already each ask for a bit more. */
function createRest(socket: WebSocket): (wait: number) => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  return (wait) => {
    if (wait === 0) return;
    clearTimeout(timer);
    socket.pause();
    timer = setTimeout(() => socket.resume(), Math.min(wait, LONGEST_REST));
    timer.unref();
  };
}

/** @throws when the message cannot be read. */
function handle(room: Room, peer: Peer, data: Uint8Array, rest: (wait: number) => void): void {
  const decoder = decoding.createDecoder(data);
  switch (decoding.readVarUint(decoder)) {
    case messages.sync:
      handleSync(room, peer, decoder);
      break;
    case messages.awareness:
      if (data.byteLength > LARGEST_PRESENCE) throw new Error('too large for presence');
      room.presence(peer, decoding.readVarUint8Array(decoder));
      break;
    case messages.queryAwareness:
      room.allPresence(peer);
      break;
    case messages.remark:
      if (data.byteLength > LARGEST_REMARK) throw new Error('too large for a remark');
      rest(remarksOf(room).take(1));
      room.remark(peer, decoding.readVarString(decoder));
      break;
    case messages.mark:
      room.mark(peer, decoding.readVarUint(decoder));
      break;
    default:
      throw new Error('no such message');
  }
}

const [QUESTION, ANSWER, UPDATE] = [0, 1, 2];

function handleSync(room: Room, peer: Peer, decoder: decoding.Decoder): void {
  const kind = decoding.readVarUint(decoder);
  const body = decoding.readVarUint8Array(decoder);
  if (kind === QUESTION) room.answer(peer, body);
  else if (kind === ANSWER || kind === UPDATE) room.take(peer, body);
  else throw new Error('no such part');
}
