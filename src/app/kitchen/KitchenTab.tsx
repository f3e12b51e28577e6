import { AirFields } from './AirFields.tsx';
import { Cooktop } from './Cooktop.tsx';
import { Hoods } from './Hoods.tsx';
import { HouseFields } from './HouseFields.tsx';
import { HousePressure } from './HousePressure.tsx';
import { RequiredAir } from './RequiredAir.tsx';
import { Sound } from './Sound.tsx';

/** The kitchen and the house that every scheme shares, with the airflow that they ask for and bear. */
export function KitchenTab() {
  return (
    <div className="kitchen">
      <RequiredAir />
      <Cooktop />
      <Hoods />
      <HousePressure />
      <HouseFields />
      <Sound />
      <AirFields />
    </div>
  );
}
