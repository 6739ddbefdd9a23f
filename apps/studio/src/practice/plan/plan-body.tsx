/** The plan, once it is loaded. */
export default function PlanBody() {
  return null;
}
