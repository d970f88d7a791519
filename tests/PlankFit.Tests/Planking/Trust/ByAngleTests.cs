using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Trust;

/// <summary>
/// The master laid by its angle at the keel instead of by its marks, as the whole planner lays it on a table: why the sheets say marks. A prism's planks unrolled are
/// straight, L = g / sin; dL/d(chine b_i) = cb c_i(c) / sin and dL/d(keel b_i) = -cb [c_i(k) / sin + g cos / sin² c_i'(m)], c_i the loft's cardinal splines, k and c the plank's
/// foot and landing, m the master's foot.
/// </summary>
public sealed class ByAngleTests
{
    private const double StepMm = 0.5;

    [Theory]
    [InlineData("chine", 4, -0.169684)]
    [InlineData("chine", 5, 0.795263)]
    [InlineData("chine", 6, 0.815772)]
    [InlineData("keel", 4, 0.940908)]
    [InlineData("keel", 5, -2.565140)]
    [InlineData("keel", 6, 0.377485)]
    public void TheMasterTurnsWithTheKeelBesideItsFoot(string line, int station, double slope) =>
        Assert.Equal(slope, Slope(p => Cell(p, line, station)), 2e-4);

    /// <summary>Of all offsets alike L is out by a √2: 3 mm for 1.5 mm in each of four offsets, twice what it is by its marks.</summary>
    [Fact]
    public void ABottomAllTheWiderIsLongerByTheWholeOfIt()
    {
        double b = Slope(p => Line(p, "chine", false)),
            h = Slope(p => Line(p, "chine", true)),
            kb = Slope(p => Line(p, "keel", false)),
            kh = Slope(p => Line(p, "keel", true));
        double girth = Math.Sqrt((960.0 * 960) + (320 * 320));
        Assert.Equal(1.414214 * 960 / girth, b, 1e-4);
        Assert.Equal(1.414214 * 320 / girth, h, 1e-4);
        Assert.Equal(3, 1.5 * Math.Sqrt((b * b) + (h * h) + (kb * kb) + (kh * kh)), 1e-3);
    }

    /// <summary>-24.977119 mm a degree.</summary>
    [Fact]
    public void ADegreeMoreIsShorter()
    {
        double At(double degrees) =>
            Length(
                PrismTable.Job with
                {
                    Layers =
                    [
                        PlankLayer.Of(
                            "skin",
                            0.01,
                            150,
                            Heads.Aft,
                            degrees,
                            5000,
                            Hold.Width,
                            7.5,
                            0.5,
                            null
                        ),
                    ],
                }
            );
        Assert.Equal(-24.977119, (At(45.05) - At(44.95)) / 0.1, 1e-3);
        Assert.Equal(1431.083506, At(45), 0.01);
    }

    private static double Slope(Func<double, OffsetTable> table) =>
        (
            Length(PrismTable.Job with { Offsets = table(StepMm) })
            - Length(PrismTable.Job with { Offsets = table(-StepMm) })
        ) / (2 * StepMm);

    private static double Length(PlankingJob job) =>
        BottomPlanner
            .Plan(new Job(job), null, TestContext.Current.CancellationToken)
            .Plan!.PlankLayers.Single()
            .Starboard.Single(p => p.Kind == PlankKind.Master)
            .NetLengthMm;

    private static OffsetTable Cell(double by, string line, int station) =>
        Changed(
            line,
            l =>
                l with
                {
                    HalfBreadthsMm = l.HalfBreadthsMm.SetItem(
                        station,
                        l.HalfBreadthsMm[station] + by
                    ),
                }
        );

    private static OffsetTable Line(double by, string line, bool heights) =>
        Changed(
            line,
            l =>
                heights
                    ? l with
                    {
                        HeightsMm = [.. l.HeightsMm.Select(v => v + by)],
                    }
                    : l with
                    {
                        HalfBreadthsMm = [.. l.HalfBreadthsMm.Select(v => v + by)],
                    }
        );

    private static OffsetTable Changed(string line, Func<OffsetLine, OffsetLine> change) =>
        PrismTable.Offsets with
        {
            Lines = [.. PrismTable.Offsets.Lines.Select(l => l.Name == line ? change(l) : l)],
        };
}
