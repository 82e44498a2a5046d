// The rooms of the rule pages, which the app draws too.
export { type PlainRoomChange, plainRoom, plainRoomFile } from '#model/rules/plainRoom.ts';
