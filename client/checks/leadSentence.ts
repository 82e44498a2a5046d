/** The first sentence of a message, and what else it says: "" where that is all. Joined by a space they are the message. */
export function leadSentence(message: string): readonly [lead: string, rest: string] {
  const end = /[.?!] (?=\p{Lu})/u.exec(message);
  return end ? [message.slice(0, end.index + 1), message.slice(end.index + 2)] : [message, ''];
}
