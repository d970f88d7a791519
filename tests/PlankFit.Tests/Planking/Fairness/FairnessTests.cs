using System.Collections.Immutable;
using PlankFit.Planking.Fairness;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Units;
using PlankFit.Tests.Support;
using Fair = PlankFit.Planking.Fairness.FairnessCheck;

namespace PlankFit.Tests.Planking.Fairness;

public class FairnessTests
{
    private static OffsetTable Launch => DemoTables.Read("survey-launch");

    private static OffsetTable With(
        OffsetTable table,
        string line,
        Measure measure,
        int station,
        Func<double, double?> change
    )
    {
        OffsetLine old = table.Find(line)!;
        ImmutableArray<double?> cells = OffsetRow.Cells(old, measure);
        cells = cells.SetItem(station, change(cells[station]!.Value));
        OffsetLine changed =
            measure == Measure.Height
                ? old with
                {
                    HeightsMm = cells,
                }
                : old with
                {
                    HalfBreadthsMm = cells,
                };
        return table with { Lines = table.Lines.Replace(old, changed) };
    }

    [Fact]
    public void TheDemoHullsAreFair()
    {
        foreach ((string hull, LengthUnit unit) in DemoTables.All)
        {
            FairnessReport report = Fair.Judge(DemoTables.Read(hull), unit);
            Assert.Empty(report.Findings(unit));
            Assert.Equal(hull == "pilot-skiff" ? 6 : 4, report.Rows.Length);
        }
    }

    [Theory]
    [InlineData("survey-launch", 6, 9.6, "(9|10)\\.\\d mm outside .*: .*\\(10 mm misread\\)")]
    [InlineData("survey-launch", 4, -100, "(99|100)(\\.\\d)? mm inside .*: .*\\(100 mm misread\\)")]
    [InlineData("pilot-skiff", 5, 9.525, "/(8|16|32)\" outside .*: .*\\(3/8\" misread\\)")]
    [InlineData("pilot-skiff", 3, -304.8, "(11|12|1'-0)[^\"]*\" inside .*: .*\\(a foot misread\\)")]
    public void ASlipIsNamedWithItsSizeAndLikelyCause(
        string hull,
        int station,
        double error,
        string pattern
    )
    {
        LengthUnit unit = DemoTables.All.First(d => d.Hull == hull).Unit;
        OffsetTable table = With(
            DemoTables.Read(hull),
            "chine",
            Measure.HalfBreadth,
            station,
            v => v + error
        );
        Suspicion found = Assert.Single(Fair.Judge(table, unit).Suspicions);
        Assert.Equal($"station {station}, chine half-breadth", found.Where);
        Assert.Equal(error, found.ResidualMm, 1.5);
        Assert.True(found.Severity > 0.9);
        Assert.Matches(pattern, found.Message(unit, unit));
        var finding = found.ToFinding(unit, unit);
        Assert.Equal(Severity.Warning, finding.Severity);
    }

    [Fact]
    public void FiguresThatChangedPlacesAreReadInTheTablesOwnNotation()
    {
        // 632 written as 623; 2-4-4 would be its own mirror, so 1-7-6+ becomes 1-6-7+.
        OffsetTable launch = With(Launch, "chine", Measure.HalfBreadth, 4, _ => 623);
        Assert.Equal(
            "632 was probably meant (figures 2 and 3 exchanged)",
            Assert.Single(Fair.Judge(launch, LengthUnit.Millimetre).Suspicions).Cause
        );
        OffsetTable skiff = DemoTables.Read("pilot-skiff");
        skiff = With(skiff, "chine", Measure.HalfBreadth, 3, _ => 25.4 * (12 + 6 + (7.5 / 8)));
        Assert.Equal(
            "1-7-6+ was probably meant (inches and eighths exchanged)",
            Assert.Single(Fair.Judge(skiff, LengthUnit.FeetInchesEighths).Suspicions).Cause
        );
    }

    [Fact]
    public void ASignAndACopyFromAnotherRowOrColumnAreNamed()
    {
        OffsetTable sign = With(Launch, "chine", Measure.Height, 5, v => -v);
        Assert.Equal("452 was probably meant (wrong sign)", Worst(sign).Cause);
        OffsetTable row = With(
            Launch,
            "chine",
            Measure.Height,
            5,
            _ => Launch.Find("chine")!.HalfBreadthsMm[5]!.Value
        );
        Assert.Equal("the same as the chine half-breadth: wrong row?", Worst(row).Cause);
        OffsetTable column = With(
            Launch,
            "chine",
            Measure.Height,
            5,
            _ => Launch.Find("chine")!.HeightsMm[6]!.Value
        );
        Assert.Equal("the same as at station 6: wrong column?", Worst(column).Cause);
    }

    private static Suspicion Worst(OffsetTable table) =>
        Fair.Judge(table, LengthUnit.Millimetre).Suspicions[0];

    [Fact]
    public void SuspicionsAreRankedTheWorstFirst()
    {
        OffsetTable table = With(Launch, "chine", Measure.HalfBreadth, 3, v => v + 12);
        table = With(table, "keel edge", Measure.Height, 4, v => v - 40);
        FairnessReport report = Fair.Judge(table, LengthUnit.Millimetre);
        Assert.Equal(
            ["station 4, keel edge height", "station 3, chine half-breadth"],
            report.Suspicions.Select(s => s.Where)
        );
    }

    [Fact]
    public void ALineWithGapsIsJudgedOverTheStationsItHas()
    {
        OffsetTable table = With(Launch, "chine", Measure.HalfBreadth, 6, _ => null);
        table = With(table, "chine", Measure.HalfBreadth, 4, v => v + 25.4);
        Suspicion found = Assert.Single(Fair.Judge(table, LengthUnit.Millimetre).Suspicions);
        Assert.Equal("4", found.Station);
        Assert.Equal(4, found.StationIndex);
        Assert.Equal(25.4, found.ResidualMm, 1.5);
    }

    [Fact]
    public void ALinesOwnPositionsAreWhereItsPointsLie()
    {
        // The raked transom moves the chine's last point 61 mm aft; over the stations' own x the same row would be judged otherwise.
        JudgedRow chine = Fair.Judge(Launch, LengthUnit.Millimetre)
            .Rows.First(r => r.Row.Name == "chine half-breadth");
        Assert.Equal(8061, chine.Row.XMm[^1]);
        Assert.Equal(10, chine.SecondDifferences.Length);
    }

    [Fact]
    public void AShortRowIsSaidNotToBeJudged()
    {
        OffsetTable table = Launch;
        OffsetLine chine = table.Find("chine")!;
        ImmutableArray<double?> four =
        [
            .. chine.HeightsMm.Select((v, i) => i is >= 2 and < 6 ? v : null),
        ];
        table = table with { Lines = table.Lines.Replace(chine, chine with { HeightsMm = four }) };
        FairnessReport report = Fair.Judge(table, LengthUnit.Millimetre);
        Finding note = Assert.Single(report.NotJudged);
        Assert.Equal("chine height", note.Where);
        Assert.Contains("4 known values", note.Message);
        Assert.Equal(3, report.Rows.Length);
    }

    [Fact]
    public void PointsThatDoNotGoAftAreSaidNotToBeJudged()
    {
        OffsetTable table = Launch;
        OffsetLine chine = table.Find("chine")!;
        table = table with
        {
            Lines = table.Lines.Replace(
                chine,
                chine with
                {
                    PositionsMm = chine.PositionsMm.SetItem(5, 1200),
                }
            ),
        };
        Assert.Equal(2, Fair.Judge(table, LengthUnit.Millimetre).NotJudged.Length);
    }
}
