using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Planking.Topsides;

/// <summary>What is said of the corner where a topside's planks are fit at the chine.</summary>
public sealed class ChineCornerToldTests
{
    /// <summary>A plumb topside of 14 mm over a bottom that rises by 0.3: the wedge is 14 times the tangent of the angle by which the corner is off square.</summary>
    [Theory]
    [InlineData(EndCut.Fit, true)]
    [InlineData(EndCut.LeftLong, false)]
    public void AWedgeIsToldWherePlanksAreFit(EndCut cut, bool told)
    {
        double[] x = [.. Enumerable.Range(0, 9).Select(i => i * 500.0)];
        EndRules ends = EndRules.LeftLong with
        {
            Lower = cut == EndCut.Fit ? EndRule.Fit : EndRule.LeftLong(20),
        };
        BottomPlan plan = WholeBottomTests.Planned(
            TopsideJob.Of(
                [.. x.Select(a => (a, 900.0, 250.0))],
                [.. x.Select(a => (a, 900.0, 950.0))],
                45,
                [6, 8],
                ends: ends
            )
        );
        Finding? finding = plan.Findings.SingleOrDefault(f =>
            f.Message.Contains("cut square there", StringComparison.Ordinal)
        );
        Assert.Equal(told, finding is not null);
        if (finding is not null)
        {
            // 14 mm × 0.3 = 4.2 mm, on paper to half a millimetre.
            Assert.Contains("up to 4 mm through", finding.Message, StringComparison.Ordinal);
        }
    }

    /// <summary>Where the topside has a station more than the bottom the two splines differ, and it is told by how much.</summary>
    [Fact]
    public void ALineDrawnThroughOtherStationsIsTold()
    {
        double[] x = [0, 300, 800, 1500, 2300, 3200, 4100];
        (double, double, double) Chine(double a) =>
            (a, 300 + (600 * Math.Sin(a / 2600)), 420 - (170 * Math.Sin(a / 2600)));
        Job job = TopsideJob.Of(
            [.. x.Select(Chine)],
            [.. x.Select(a => (a, Chine(a).Item2 + 80, Chine(a).Item3 + 600))],
            50,
            [6]
        );
        OffsetLine keel = job.Offsets.Find("keel")!;
        Job shorter = job with { };
        OffsetTable table = job.Offsets with
        {
            Lines =
            [
                keel with
                {
                    HeightsMm = [null, .. keel.HeightsMm.Skip(1)],
                    HalfBreadthsMm = [null, .. keel.HalfBreadthsMm.Skip(1)],
                },
                .. job.Offsets.Lines.Where(l => l != keel),
            ],
        };
        shorter = shorter with
        {
            Offsets = table,
            Panels = [job.Panels[0] with { Offsets = table }],
        };
        Assert.DoesNotContain(WholeBottomTests.Planned(job).Findings, IsOfStations);
        Assert.Contains(WholeBottomTests.Planned(shorter).Findings, IsOfStations);
    }

    private static bool IsOfStations(Finding f) =>
        f.Message.Contains("is drawn through other stations", StringComparison.Ordinal);
}
