using MathNet.Numerics.LinearAlgebra;
using PlankFit.Export.Trust;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Trust;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Taping;

/// <summary>From a job with [trust] and measured.csv to planks on the hull as it stands.</summary>
public sealed class TapedPlanTests
{
    private const string Asked = "\n[trust]\n\n[as-built]\nmeasured = \"measured.csv\"\n";

    /// <summary>What a tape reads at stations 5 and 7 of the hull as drawn.</summary>
    private static readonly Lazy<double[]> DrawnGirths = new(() =>
    {
        var hulls = new TapedHulls(TapedHulls.Launch, TrustSpec.Default, 1);
        return hulls.Expected(
            [TapedHulls.Girth("5"), TapedHulls.Girth("7")],
            Vector<double>.Build.Dense(2 * hulls.Cells.Count)
        );
    });

    private static readonly Lazy<BottomPlan> Drawn = new(() => Of("", null));

    private static BottomPlan Of(string asked, string? measured) =>
        BottomPlanner.Plan(Read(asked, measured)).Plan!;

    /// <summary>Of the planks and their trust alone: nothing else of the launch moves them.</summary>
    private static Job Read(string asked, string? measured)
    {
        string folder = DemoTables.Folder("survey-launch");
        ReadResult read = JobReader.Read(
            File.ReadAllText(Path.Combine(folder, "job.toml")) + asked,
            "job.toml",
            File.ReadAllText(Path.Combine(folder, "offsets.csv")),
            "offsets.csv",
            measured
        );
        Assert.Empty(read.Findings.Where(f => f.Severity == Severity.Error));
        return read.Job! with { Joints = null, Fastenings = null, SettingUp = null, Framing = [] };
    }

    private static double Girth(BottomPlan plan, Side side, string station) =>
        plan.AsBuilt!.Girths[side].Single(r => r.Station == station).NowMm;

    /// <summary>A tape that says just what is drawn moves nothing, and that is said.</summary>
    [Fact]
    public void AReadingThatIsJustWhatIsDrawnMovesNothing()
    {
        BottomPlan plan = Of(
            Asked,
            FormattableString.Invariant(
                $"what,where,side,value\ngirth,7,starboard,{DrawnGirths.Value[1]:0.0000}\n"
            )
        );
        Assert.Empty(plan.Taped!.Cells);
        Assert.Contains(
            plan.Findings,
            f => f.Message.EndsWith(": it stands as drawn", StringComparison.Ordinal)
        );
    }

    /// <summary>Left long by 4 mm, planks are out by more: cards, findings and what may be sawn now go by one figure, that which keeps a whole side from coming short.</summary>
    [Fact]
    public void CardsFindingsAndWhatMayBeSawnGoByOneFigure()
    {
        Job job = Read("\n[trust]\n", null);
        job = job with { Ends = job.Ends with { Upper = job.Ends.Upper with { ByMm = 4 } } };
        BottomPlan plan = BottomPlanner
            .Plan(job, null, TestContext.Current.CancellationToken)
            .Plan!;
        PlankLayerPlan layer = plan.PlankLayers.First();
        LayerTrust trust = plan.Trust!.Layers[0];
        (Plank Plank, PlankTrust Trust)[] told =
        [
            .. layer
                .Starboard.Zip(trust.Planks)
                .Where(p => !p.Second.InPlace && !p.First.FitBothEnds),
        ];
        bool IsBare((Plank Plank, PlankTrust Trust) p) =>
            p.Plank.Ends.Min(e => e.OverhangMm) < p.Trust.NoneShortMm;
        Assert.All(
            told,
            p =>
                Assert.Equal(
                    IsBare(p),
                    TrustWords
                        .OnCard(layer, p.Plank, p.Trust, job.Units)
                        .Any(l => l.StartsWith("Leave ", StringComparison.Ordinal))
                )
        );
        Finding bare = Assert.Single(
            plan.Findings,
            f =>
                f.Where == $"layer {layer.Spec.Name}"
                && f.Message.Contains("from coming short", StringComparison.Ordinal)
        );
        Assert.StartsWith(
            string.Join(", ", told.Where(IsBare).Select(p => p.Trust.Id)) + " ",
            bare.Message,
            StringComparison.Ordinal
        );
    }

    /// <summary>Two readings of each of two girths, some millimetres over what is drawn: the hull takes up most of it on that side, little of it on the other, and planks follow.</summary>
    [Fact]
    public void PlanksAreLaidOnTheHullAsTheTapeHasIt()
    {
        (double five, double seven) = (DrawnGirths.Value[0], DrawnGirths.Value[1]);
        string rows =
            "what,where,side,value\n"
            + string.Concat(
                new[] { ("5", five), ("7", seven) }.SelectMany(g =>
                    new[] { 3.5, 4.5 }.Select(by =>
                        FormattableString.Invariant(
                            $"girth,{g.Item1},starboard,{g.Item2 + by:0.00}\n"
                        )
                    )
                )
            );
        BottomPlan plan = Of(Asked, rows);
        Assert.NotNull(plan.Taped);
        Assert.Empty(plan.Taped.Slips);
        Assert.InRange(Girth(plan, Side.Starboard, "5") - five, 2.5, 4);
        Assert.InRange(Math.Abs(Girth(plan, Side.Port, "5") - five), 0, 2);
        PlankLayerPlan inner = plan.PlankLayers.First();
        Assert.NotNull(inner.PortApart);
        Assert.Contains(
            plan.Findings,
            f => f.Message.Contains("adjusted to 4 readings", StringComparison.Ordinal)
        );
        // What is drawn is what is told as drawn.
        Assert.All(plan.Taped.Rows, r => Assert.Equal(4, r.OffMm, 0.6));
    }

    /// <summary>[trust] alone, with nothing read, moves no plank by a bit.</summary>
    [Fact]
    public void TrustAloneMovesNothing()
    {
        BottomPlan trusted = Of("\n[trust]\n", null);
        Assert.Null(trusted.Taped);
        foreach (
            (PlankLayerPlan a, PlankLayerPlan b) in Drawn.Value.PlankLayers.Zip(trusted.PlankLayers)
        )
        {
            Assert.Equal(a.Starboard.Length, b.Starboard.Length);
            Assert.All(
                a.Starboard.Zip(b.Starboard),
                p => Assert.Equal<Vec3>(p.First.Outline, p.Second.Outline)
            );
        }
    }

    /// <summary>Without [trust] a girth bends the bottom to itself, as ever.</summary>
    [Fact]
    public void WithoutTrustGirthsBendTheBottomAsEver()
    {
        double drawn = DrawnGirths.Value[0];
        BottomPlan bent = Of(
            "\n[as-built]\nmeasured = \"measured.csv\"\n",
            FormattableString.Invariant(
                $"what,where,side,value\ngirth,5,starboard,{drawn + 4:0.00}\n"
            )
        );
        Assert.Null(bent.Taped);
        Assert.Null(bent.Planked.Job.AsBuilt.Tables);
        Assert.Equal(drawn + 4, Girth(bent, Side.Starboard, "5"), 0.01);
    }
}
