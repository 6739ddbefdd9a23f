/** Hearing oneself, once it is loaded. */
export default function HearingBody() {
  return null;
}
