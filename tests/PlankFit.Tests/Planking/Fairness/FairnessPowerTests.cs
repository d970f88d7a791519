using PlankFit.Planking.Fairness;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Units;
using Fair = PlankFit.Planking.Fairness.FairnessCheck;

namespace PlankFit.Tests.Planking.Fairness;

/// <summary>
/// How often a planted error is found, and how often a clean table is accused, by how the table was written, its stations, where the error is and how large. The
/// rates are those measured on 600 clean tables and 200 errors of each kind by chance, and are held within three standard deviations of the counts; no published
/// ones were found. Few are drawn unless PLANKFIT_LONG is 1.
/// </summary>
public class FairnessPowerTests
{
    private static readonly bool Long = Environment.GetEnvironmentVariable("PLANKFIT_LONG") == "1";
    private static readonly int Trials = Long ? 200 : 12;
    private static readonly int CleanTables = Long ? 600 : 30;

    /// <summary>1/8, 1/4, 1/2 and 1 in.</summary>
    private static readonly double[] SizesMm = [3.175, 6.35, 12.7, 25.4];
    private static readonly int[] SizesTried = Long ? [0, 1, 2, 3] : [1, 3];

    /// <param name="accused">The part of clean tables in which anything is told.</param>
    /// <param name="formerly">The same for the judge by leave-one-out alone that this one took the place of, on the same tables.</param>
    /// <param name="next">Errors next to an end of a row, found of a hundred, by size.</param>
    /// <param name="third">The third from an end.</param>
    /// <param name="inner">Further in.</param>
    [Theory]
    [InlineData(
        Written.Millimetres,
        8,
        0.160,
        0.360,
        new[] { 40, 58, 72, 86 },
        new[] { 42, 63, 82, 95 },
        new[] { 46, 76, 86, 98 }
    )]
    [InlineData(
        Written.Millimetres,
        11,
        0.078,
        0.173,
        new[] { 52, 80, 95, 99 },
        new[] { 62, 90, 96, 100 },
        new[] { 66, 96, 99, 100 }
    )]
    [InlineData(
        Written.Millimetres,
        14,
        0.043,
        0.147,
        new[] { 62, 92, 98, 100 },
        new[] { 74, 99, 100, 100 },
        new[] { 80, 100, 100, 100 }
    )]
    [InlineData(
        Written.Eighths,
        8,
        0.173,
        0.592,
        new[] { 12, 50, 68, 88 },
        new[] { 6, 61, 80, 96 },
        new[] { 8, 60, 88, 98 }
    )]
    [InlineData(
        Written.Eighths,
        11,
        0.037,
        0.752,
        new[] { 12, 60, 91, 97 },
        new[] { 10, 86, 98, 100 },
        new[] { 8, 87, 98, 100 }
    )]
    [InlineData(
        Written.Eighths,
        14,
        0.003,
        0.807,
        new[] { 6, 82, 95, 99 },
        new[] { 12, 88, 100, 100 },
        new[] { 12, 94, 100, 100 }
    )]
    [InlineData(
        Written.RoughEighths,
        8,
        0.190,
        0.872,
        new[] { 10, 42, 67, 88 },
        new[] { 7, 42, 77, 96 },
        new[] { 8, 56, 88, 98 }
    )]
    [InlineData(
        Written.RoughEighths,
        11,
        0.140,
        0.982,
        new[] { 12, 60, 92, 98 },
        new[] { 12, 69, 98, 100 },
        new[] { 14, 74, 98, 100 }
    )]
    [InlineData(
        Written.RoughEighths,
        14,
        0.107,
        0.983,
        new[] { 10, 68, 95, 100 },
        new[] { 15, 76, 100, 100 },
        new[] { 12, 82, 100, 100 }
    )]
    public void ErrorsAreFoundAndCleanTablesLeftAlone(
        Written written,
        int stations,
        double accused,
        double formerly,
        int[] next,
        int[] third,
        int[] inner
    )
    {
        Assert.True(accused < formerly);
        LengthUnit unit = RandomTable.Unit(written);
        int told = Enumerable
            .Range(0, CleanTables)
            .Count(i => Accused(PlantedError.Clean(written, stations, i), unit).Count > 0);
        Assert.True(
            told <= Most(accused, CleanTables),
            $"{told} of {CleanTables} clean tables accused"
        );
        foreach (int size in SizesTried)
        {
            Found(Place.Next, next[size], size);
            Found(Place.Third, third[size], size);
            Found(Place.Inner, inner[size], size);
        }

        void Found(Place place, int percent, int size)
        {
            int found = 0;
            for (int i = 0; i < Trials; i++)
            {
                var planted = PlantedError.Of(written, stations, place, SizesMm[size], i);
                found += Accused(planted.Table, unit).Contains((planted.Row, planted.Station))
                    ? 1
                    : 0;
            }

            Assert.True(
                found >= Least(percent / 100.0, Trials),
                $"{place}, {SizesMm[size]} mm: {found} of {Trials} found where {percent} of a hundred were"
            );
        }
    }

    /// <summary>An end is never named alone: where it explains a row all but as well as its neighbour, the neighbour is named and the end with it.</summary>
    [Fact]
    public void AnEndIsToldOnlyBesideItsNeighbour()
    {
        int told = 0,
            ends = 0;
        for (int i = 0; i < 10 * Trials; i++)
        {
            var planted = PlantedError.Of(Written.Millimetres, 11, Place.End, 25.4, i);
            Suspicion[] cells = [.. Fair.Judge(planted.Table, LengthUnit.Millimetre).Suspicions];
            ends += cells.Count(s =>
                s.StationIndex is 0 or 10
                && !s.Cause!.Contains("exchanged", StringComparison.Ordinal)
            );
            told += cells.Count(s => s.OrEnd == planted.Table.Stations[planted.Station].Name);
        }

        Assert.Equal(0, ends);
        Assert.True(told > 0);
    }

    private static HashSet<(int Row, int Station)> Accused(OffsetTable table, LengthUnit unit)
    {
        FairnessReport report = Fair.Judge(table, unit);
        return
        [
            .. report
                .Suspicions.Concat(report.Stations.SelectMany(s => s.Lines))
                .Select(s =>
                    (
                        (2 * table.Lines.IndexOf(table.Find(s.Line)!))
                            + (s.Measure == Measure.Height ? 0 : 1),
                        s.StationIndex
                    )
                ),
        ];
    }

    private static double Least(double rate, int of) => (rate - Margin(rate, of)) * of;

    private static double Most(double rate, int of) => (rate + Margin(rate, of)) * of;

    /// <summary>Three standard deviations of the count; rates of all or none are taken for one in two hundred off.</summary>
    private static double Margin(double rate, int of)
    {
        double sure = Math.Clamp(rate, 0.005, 0.995);
        return 3 * Math.Sqrt(sure * (1 - sure) / of);
    }
}
