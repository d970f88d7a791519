using PlankFit.Planking.Hulls;

namespace PlankFit.Tests.Planking.Fairness;

/// <summary>Where along a row an error is planted, counted from the nearer end.</summary>
public enum Place
{
    End,
    Next,
    Third,
    Inner,
}

/// <summary>A table by chance, clean or with one error of known size; the same for the same numbers, whatever was drawn before.</summary>
/// <param name="Row">Heights and half-breadths of the lines in turn.</param>
public sealed record PlantedError(OffsetTable Table, int Row, int Station)
{
    public static OffsetTable Clean(Written written, int stations, int trial) =>
        RandomTable.Of(new(Seed(written, stations, 0, 0, trial)), stations, written);

    public static PlantedError Of(
        Written written,
        int stations,
        Place place,
        double sizeMm,
        int trial
    )
    {
        Random by = new(Seed(written, stations, 1 + (int)place, (int)(sizeMm * 8), trial));
        OffsetTable table = RandomTable.Of(by, stations, written);
        int row = by.Next(2 * table.Lines.Length),
            station = place == Place.Inner ? by.Next(3, stations - 3) : (int)place;
        station = by.Next(2) == 0 ? station : stations - 1 - station;
        double cell = RandomTable.Cell(table, row, station),
            size = by.Next(2) == 0 || (row % 2 == 1 && cell < sizeMm) ? sizeMm : -sizeMm;
        return new(RandomTable.With(table, row, station, cell + size), row, station);
    }

    private static int Seed(Written written, int stations, int place, int size, int trial) =>
        (((((((int)written * 31) + stations) * 31) + place) * 1009) + size) * 100_003 + trial;
}
