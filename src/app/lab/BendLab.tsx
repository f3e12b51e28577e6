export default function BendLab() {
  return null;
}
