using PlankFit.Planking.Fairness;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Units;
using Fair = PlankFit.Planking.Fairness.FairnessCheck;

namespace PlankFit.Tests.Planking.Fairness;

/// <summary>
/// Slips of known kinds, planted by chance in tables by chance: in what part of them the cell is found and what was meant is named. Only slips that move the value by an
/// inch or more are planted: less is held by the rates of errors of any kind.
/// </summary>
public class NamedSlipTests
{
    private const double LeastMm = 25.4;
    private static readonly int Trials =
        Environment.GetEnvironmentVariable("PLANKFIT_LONG") == "1" ? 400 : 30;

    private sealed record Planted(
        OffsetTable Table,
        (int Row, int Station)[] Cells,
        string[] Meant
    );

    [Theory]
    [InlineData(Written.Eighths, "feet and inches exchanged", 0.9)]
    [InlineData(Written.Eighths, "inches and eighths exchanged", 0.9)]
    [InlineData(Written.Eighths, "a foot misread", 0.9)]
    [InlineData(Written.Eighths, "1\" misread", 0.6)]
    [InlineData(Written.Millimetres, "figures . and . exchanged", 0.9)]
    [InlineData(Written.Millimetres, "100 mm misread", 0.9)]
    [InlineData(Written.Millimetres, "a foot misread", 0.9)]
    [InlineData(Written.Eighths, "wrong sign", 0.9)]
    [InlineData(Written.Millimetres, "wrong sign", 0.9)]
    public void ASlipOfTheEyeIsFoundAndNamed(Written written, string how, double share)
    {
        Hold(written, share, how, (table, by) => OneCell(table, by, written, how));
    }

    [Theory]
    [InlineData(Written.Eighths)]
    [InlineData(Written.Millimetres)]
    public void TwoNeighboursOfARowThatChangedPlacesAreNamed(Written written) =>
        Hold(written, 0.9, "exchanged with station", NeighboursExchanged);

    [Theory]
    [InlineData(Written.Eighths)]
    [InlineData(Written.Millimetres)]
    public void TwoLinesThatChangedPlacesAtAStationAreNamed(Written written) =>
        Hold(written, 0.9, "exchanged with the", LinesExchanged);

    private static void Hold(
        Written written,
        double share,
        string how,
        Func<OffsetTable, Random, Planted?> plant
    )
    {
        int tried = 0,
            named = 0;
        LengthUnit unit = RandomTable.Unit(written);
        for (int trial = 0; tried < Trials && trial < 40 * Trials; trial++)
        {
            Random by = new((101 * trial) + (int)written);
            int stations = new[] { 8, 11, 14 }[trial % 3];
            if (plant(RandomTable.Of(by, stations, written), by) is not { } planted)
            {
                continue;
            }

            tried++;
            Suspicion[] found = [.. Fair.Judge(planted.Table, unit).Suspicions];
            named += planted
                .Cells.Select((cell, i) => (cell, planted.Meant[i]))
                .All(c =>
                    found.Any(s =>
                        s.Line == planted.Table.Lines[c.cell.Row / 2].Name
                        && s.Measure == RandomTable.MeasureOf(c.cell.Row)
                        && s.StationIndex == c.cell.Station
                        && s.Cause is { } cause
                        && cause.Contains(c.Item2, StringComparison.Ordinal)
                        && System.Text.RegularExpressions.Regex.IsMatch(cause, how)
                    )
                )
                ? 1
                : 0;
        }

        Assert.Equal(Trials, tried);
        double margin = 3 * Math.Sqrt(share * (1 - share) / Trials);
        Assert.True(named >= (share - margin) * Trials, $"{named} of {Trials} named");
    }

    /// <summary>A cell that is no end and the slip written into it; null where the slip does not alter it enough or could not be written.</summary>
    private static Planted? OneCell(OffsetTable table, Random by, Written written, string how)
    {
        int row = by.Next(2 * table.Lines.Length),
            station = by.Next(1, table.Stations.Length - 1);
        double right = RandomTable.Cell(table, row, station);
        if (Slipped(right, written, how, by) is not { } wrong)
        {
            return null;
        }

        bool possible = RandomTable.MeasureOf(row) == Measure.Height || wrong >= 0;
        return possible && Math.Abs(wrong - right) >= LeastMm
            ? new(
                RandomTable.With(table, row, station, wrong),
                [(row, station)],
                [$"{TableText.Of(right, RandomTable.Unit(written))} "]
            )
            : null;
    }

    /// <summary>What the pen puts down in place of a value; null where it cannot be that slip.</summary>
    private static double? Slipped(double mm, Written written, string how, Random by)
    {
        int sign = by.Next(2) == 0 ? 1 : -1;
        if (how.EndsWith("misread", StringComparison.Ordinal))
        {
            double size = how.Split(' ')[0] switch
            {
                "a" => 304.8,
                "1\"" => 25.4,
                { } figures => int.Parse(
                    figures,
                    System.Globalization.CultureInfo.InvariantCulture
                ),
            };
            return mm + (sign * size);
        }

        if (how == "wrong sign")
        {
            return -mm;
        }

        if (mm <= 0)
        {
            return null;
        }

        if (written == Written.Millimetres)
        {
            char[] figures =
            [
                .. mm.ToString("0", System.Globalization.CultureInfo.InvariantCulture),
            ];
            if (figures.Length < 2)
            {
                return null;
            }

            int at = by.Next(figures.Length - 1);
            (figures[at], figures[at + 1]) = (figures[at + 1], figures[at]);
            return figures[0] == '0'
                ? null
                : double.Parse(figures, System.Globalization.CultureInfo.InvariantCulture);
        }

        int eighths = (int)Math.Round(mm / 25.4 * 8);
        (int f, int i, int e) = (eighths / 96, eighths / 8 % 12, eighths % 8);
        (f, i, e) = how.StartsWith("feet", StringComparison.Ordinal) ? (i, f, e) : (f, e, i);
        return i < 12 && e < 8 ? ((f * 96) + (i * 8) + e) * 25.4 / 8 : null;
    }

    private static Planted? NeighboursExchanged(OffsetTable table, Random by)
    {
        int row = by.Next(2 * table.Lines.Length),
            station = by.Next(table.Stations.Length - 1);
        double here = RandomTable.Cell(table, row, station),
            next = RandomTable.Cell(table, row, station + 1);
        return Math.Abs(here - next) < LeastMm
            ? null
            : new(
                RandomTable.With(
                    RandomTable.With(table, row, station, next),
                    row,
                    station + 1,
                    here
                ),
                [(row, station), (row, station + 1)],
                [$"station {station + 1}", $"station {station}"]
            );
    }

    private static Planted? LinesExchanged(OffsetTable table, Random by)
    {
        int rows = 2 * table.Lines.Length,
            row = by.Next(rows),
            other = by.Next(rows),
            station = by.Next(1, table.Stations.Length - 1);
        double here = RandomTable.Cell(table, row, station),
            there = RandomTable.Cell(table, other, station);
        return Math.Abs(here - there) < LeastMm || Math.Min(here, there) < 0
            ? null
            : new(
                RandomTable.With(
                    RandomTable.With(table, row, station, there),
                    other,
                    station,
                    here
                ),
                [(row, station), (other, station)],
                [Name(table, other), Name(table, row)]
            );
    }

    private static string Name(OffsetTable table, int row) =>
        $"{table.Lines[row / 2].Name} {OffsetRow.Word(RandomTable.MeasureOf(row))}";

    /// <summary>A station written out of place: every line is read where it truly stands, so all are out at once by their slope.</summary>
    [Theory]
    [InlineData(Written.Millimetres, 50, 0.8)]
    [InlineData(Written.Millimetres, 100, 0.8)]
    [InlineData(Written.Eighths, 50.8, 0.6)]
    [InlineData(Written.Eighths, 101.6, 0.8)]
    public void AStationOutOfPlaceIsNamedAndNotItsLines(Written written, double mm, double share)
    {
        int named = 0,
            near = 0;
        for (int trial = 0; trial < Trials; trial++)
        {
            Random by = new(7 + (101 * trial) + (int)written);
            int stations = new[] { 11, 14 }[trial % 2],
                at = by.Next(1, stations / 2);
            OffsetTable table = RandomTable.Of(by, stations, written);
            double shift = by.Next(2) == 0 ? mm : -mm;
            Station old = table.Stations[at];
            OffsetTable wrong = table with
            {
                Stations = table.Stations.SetItem(
                    at,
                    old with
                    {
                        PositionMm = old.PositionMm - shift,
                    }
                ),
            };
            FairnessReport report = Fair.Judge(wrong, RandomTable.Unit(written));
            StationSuspicion? found = report.Stations.FirstOrDefault(s => s.StationIndex == at);
            named += found is null ? 0 : 1;
            near +=
                found is not null && Math.Abs(found.OutMm - shift) < Math.Max(10, 0.2 * mm) ? 1 : 0;
        }

        double margin = 3 * Math.Sqrt(share * (1 - share) / Trials);
        Assert.True(named >= (share - margin) * Trials, $"{named} of {Trials} named");
        Assert.True(near >= 0.75 * named, $"{near} of {named} by the right distance");
    }

    /// <summary>Few stations, errors everywhere: told or not, the judge comes to an end, and names no cell twice.</summary>
    [Fact]
    public void ShortTablesFullOfErrorsAreJudgedToTheEnd()
    {
        for (int trial = 0; trial < 3 * Trials; trial++)
        {
            Random by = new(trial);
            int stations = by.Next(4, 9);
            OffsetTable table = RandomTable.Of(by, stations, Written.Millimetres);
            for (int i = by.Next(12); i >= 0; i--)
            {
                int row = by.Next(2 * table.Lines.Length),
                    at = by.Next(stations);
                double mm = RandomTable.Cell(table, row, at) + (by.NextDouble() * 400);
                table = RandomTable.With(table, row, at, mm);
            }

            FairnessReport report = Fair.Judge(table, LengthUnit.Millimetre);
            string[] cells =
            [
                .. report
                    .Suspicions.Concat(report.Stations.SelectMany(s => s.Lines))
                    .Where(s =>
                        s.Cause?.Contains("exchanged with", StringComparison.Ordinal) != true
                    )
                    .Select(s => s.Where),
            ];
            Assert.Equal(cells.Distinct(), cells);
            Assert.All(
                report.Suspicions,
                s => Assert.True(double.IsFinite(s.ResidualMm) && double.IsFinite(s.ForetoldMm))
            );
        }
    }
}
