using System.Collections.Immutable;
using PlankFit.Planking.Fairness;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Units;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Fairness;

public class FairingTests
{
    private static OffsetTable Noisy(string hull, double noise)
    {
        Random random = new(3);
        OffsetTable table = DemoTables.Read(hull);
        double? Shake(double? v, int i) =>
            i == 0 || v is null ? v : v + (noise * ((2 * random.NextDouble()) - 1));
        return table with
        {
            Lines =
            [
                .. table.Lines.Select(l =>
                    l with
                    {
                        HeightsMm = [.. l.HeightsMm.Select(Shake)],
                        HalfBreadthsMm = [.. l.HalfBreadthsMm.Select(Shake)],
                    }
                ),
            ],
        };
    }

    private static double Energy(OffsetRow row)
    {
        var judged = LeaveOneOut.Of(row.XMm.AsSpan(), row.ValuesMm.AsSpan(), 3);
        return judged.Energy;
    }

    [Theory]
    [InlineData("survey-launch", LengthUnit.Millimetre)]
    [InlineData("pilot-skiff", LengthUnit.FeetInchesEighths)]
    [InlineData("tender", LengthUnit.Millimetre)]
    public void EveryChangeIsListedStaysWithinTheToleranceAndMakesItsRowFairer(
        string hull,
        LengthUnit unit
    )
    {
        const double tolerance = 1.5;
        OffsetTable table = Noisy(hull, 0.6);
        FairedTable faired = Fairing.Fair(table, tolerance, unit);
        Assert.NotEmpty(faired.Moves);
        Assert.Empty(faired.Findings);
        ImmutableArray<OffsetRow> before = OffsetRow.All(table);
        ImmutableArray<OffsetRow> after = OffsetRow.All(faired.Table);
        int changed = 0;
        for (int r = 0; r < before.Length; r++)
        {
            Assert.True(Energy(after[r]) < Energy(before[r]));
            Assert.Equal(before[r].XMm, after[r].XMm);
            for (int i = 0; i < before[r].ValuesMm.Length; i++)
            {
                double move = after[r].ValuesMm[i] - before[r].ValuesMm[i];
                Assert.InRange(move, -tolerance - 1e-9, tolerance + 1e-9);
                Assert.True(after[r].Measure == Measure.Height || after[r].ValuesMm[i] >= 0);
                FairingMove? listed = faired.Moves.SingleOrDefault(m =>
                    m.Line == before[r].Line
                    && m.Measure == before[r].Measure
                    && m.StationIndex == before[r].Stations[i]
                );
                Assert.Equal(move != 0, listed is not null);
                if (listed is not null)
                {
                    changed++;
                    Assert.Equal(before[r].ValuesMm[i], listed.OldMm);
                    Assert.Equal(after[r].ValuesMm[i], listed.NewMm);
                    double marks = listed.NewMm / Fairing.StepMm(unit);
                    Assert.Equal(Math.Round(marks), marks, 1e-6);
                }
            }
        }

        Assert.Equal(faired.Moves.Length, changed);
    }

    [Fact]
    public void WhereKeelAndChineMeetTheyStayTogether()
    {
        FairedTable faired = Fairing.Fair(Noisy("tender", 0.8), 2, LengthUnit.Millimetre);
        Assert.DoesNotContain(faired.Moves, m => m.StationIndex == 0);
        Assert.Equal(400, faired.Table.Find("keel edge")!.HeightsMm[0]);
        Assert.Equal(400, faired.Table.Find("chine")!.HeightsMm[0]);
        Assert.Contains(faired.Moves, m => m.StationIndex == 1);
    }

    [Fact]
    public void ASlipIsNotSpreadOverItsNeighbours()
    {
        OffsetTable table = DemoTables.Read("survey-launch");
        OffsetLine chine = table.Find("chine")!;
        OffsetLine slipped = chine with
        {
            HalfBreadthsMm = chine.HalfBreadthsMm.SetItem(4, chine.HalfBreadthsMm[4] + 25.4),
        };
        FairedTable faired = Fairing.Fair(
            table with
            {
                Lines = table.Lines.Replace(chine, slipped),
            },
            2,
            LengthUnit.Millimetre
        );
        Finding finding = Assert.Single(faired.Findings);
        Assert.Equal("chine half-breadth", finding.Where);
        Assert.Contains("station 4", finding.Message);
        Assert.Equal(slipped.HalfBreadthsMm, faired.Table.Find("chine")!.HalfBreadthsMm);
    }

    [Fact]
    public void ABattenBroughtBackByFairingHasNoAlarmLeft()
    {
        OffsetTable table = DemoTables.Read("survey-launch");
        OffsetLine chine = table.Find("chine")!;
        OffsetLine slipped = chine with
        {
            HalfBreadthsMm = chine.HalfBreadthsMm.SetItem(4, chine.HalfBreadthsMm[4] + 5),
        };
        table = table with { Lines = table.Lines.Replace(chine, slipped) };
        Assert.NotEmpty(
            PlankFit.Planking.Fairness.FairnessCheck.Judge(table, LengthUnit.Millimetre).Suspicions
        );
        FairedTable faired = Fairing.Fair(table, 3, LengthUnit.Millimetre);
        Assert.Empty(
            PlankFit
                .Planking.Fairness.FairnessCheck.Judge(faired.Table, LengthUnit.Millimetre)
                .Suspicions
        );
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void AToleranceMustBeALength(double tolerance) =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            Fairing.Fair(DemoTables.Read("tender"), tolerance, LengthUnit.Millimetre)
        );
}
