using PlankFit.Geometry.Primitives;
using PlankFit.Planking.AsBuilt;
using PlankFit.Planking.Fairness;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Girths;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Planking.Keel;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.AsBuilt;

/// <summary>The hull as it stands: girths that were measured, seams that crept, planks laid on from what is fitted.</summary>
public sealed class AsBuiltTests
{
    private const double Deadrise = 20;

    /// <summary>
    /// On a plane bottom the planking's inner face is a plane, and its girth from the plumb keel side is (chine − keel)/cos b with the chine carried in along the
    /// normal by the stack: worked here by hand. The corrected bottom has the girth that was measured.
    /// </summary>
    [Fact]
    public void GirthsBecomeWhatWasMeasured()
    {
        Job job = PlaneBottom.Job(Deadrise, 0, 9, 1, OffsetsAreTo.Outside);
        double b = Deadrise * Math.PI / 180,
            whole = 19;

        // Inward along the normal the chine goes to y − whole sin b; the keel's plumb side stays at its half-breadth.
        double drawn =
            (PlaneBottom.ChineHalf - (whole * Math.Sin(b)) - PlaneBottom.KeelHalf) / Math.Cos(b);
        AsBuiltPlan plan = WholeBottomTests
            .Planned(With(job, new MeasuredGirth("3", Side.Starboard, drawn + 6)))
            .AsBuilt!;
        GirthRow[] rows = [.. plan.Girths[Side.Starboard]];
        Assert.All(rows, r => Assert.Equal(drawn, r.DrawnMm, 1e-4));

        // One reading alone holds for the whole bottom; it is all that is known.
        Assert.All(rows, r => Assert.Equal(drawn + 6, r.NowMm, 0.01));
        Assert.False(plan.Girths.ContainsKey(Side.Port));
    }

    /// <summary>Between readings the correction runs monotone: it overshoots none of them, and where two readings agree with the table it is nought.</summary>
    [Fact]
    public void TheCorrectionIsSmoothAndOvershootsNothing()
    {
        // Where more is asked for, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        Job job = PlaneBottom.Job(Deadrise, 0, 9, 1, OffsetsAreTo.Outside);
        double drawn = WholeBottomTests
            .Planned(With(job, new MeasuredGirth("3", Side.Port, 900)))
            .AsBuilt!.Girths[Side.Port][0]
            .DrawnMm;
        BottomPlan plan = WholeBottomTests.Planned(
            With(
                job,
                new MeasuredGirth("0", Side.Port, drawn),
                new MeasuredGirth("2", Side.Port, drawn),
                new MeasuredGirth("4", Side.Port, drawn + 5),
                new MeasuredGirth("7", Side.Port, drawn + 1)
            )
        );
        GirthRow[] rows = [.. plan.AsBuilt!.Girths[Side.Port]];
        Assert.All(rows, r => Assert.InRange(r.MovedMm, -0.01, 5.01));
        Assert.Equal(0, rows[1].MovedMm, 0.01);
        Assert.InRange(rows[3].MovedMm, 0.5, 4.9);
        Assert.InRange(rows[5].MovedMm, rows[6].MovedMm, 5);

        // Starboard was not measured: its planks stay what they were; port's chine stands further out in the middle.
        BottomPlan plain = WholeBottomTests.Planned(job);
        PlankLayerPlan a = plain.PlankLayers.First(),
            c = plan.PlankLayers.First();
        Assert.Equal(
            a.Starboard.Select(p => p.NetLengthMm),
            c.Starboard.Select(p => p.NetLengthMm)
        );
        Assert.Empty(BottomLaws.Broken(plan));
        double longest = c.Port.Zip(a.Port).Max(p => p.First.NetLengthMm - p.Second.NetLengthMm);

        // 5 mm of girth over the sine of 45 degrees.
        Assert.Equal(5 / Math.Sin(Math.PI / 4), longest, 0.3);
    }

    /// <summary>
    /// The after seam of S1-26 is measured 4 mm aft of its place at the keel and 2 mm at the chine: there it lies, S1-27 is laid against it, and everything that
    /// was fitted keeps its number.
    /// </summary>
    [Theory]
    [InlineData("S1-26", 4, 2)]
    [InlineData("S1-26", -3, 5)]
    [InlineData("S1-14", -4, -2)]
    public void PlanksAreLaidOnFromTheLastFittedEdge(string id, double atKeel, double atChine)
    {
        Job job = PlaneBottom.Job(Deadrise, 0, 9, 1, OffsetsAreTo.Outside);
        BottomPlan drawn = WholeBottomTests.Planned(job);
        (double keel, double chine) = Planned(job, id);
        BottomPlan plan = WholeBottomTests.Planned(
            job with
            {
                AsBuilt = AsBuiltSpec.None with
                {
                    Seams =
                    [
                        new(Named.Plank(id), PanelEdge.Lower, keel + atKeel),
                        new(Named.Plank(id), PanelEdge.Upper, chine + atChine),
                    ],
                },
            }
        );
        Assert.Empty(BottomLaws.Broken(plan));
        Plank was = drawn.Find(id)!,
            now = plan.Find(id)!;
        PlankLayerPlan layer = plan.PlankLayers.First();
        int at = layer.Starboard.IndexOf(now);
        Plank next = layer.Starboard[at + 1];

        // A straight seam on a plane: its two ends say where it lies. At the chine all faces share one line; at the keel the seam crosses the inner face's side a
        // little further in, so that the tape's 4 mm is 4 mm and a trifle of the other end's.
        Vec3[] a = [was.AfterEdge.Seam[0], was.AfterEdge.Seam[^1]],
            b = [now.AfterEdge.Seam[0], now.AfterEdge.Seam[^1]];
        Assert.Equal(atChine, b[1].X - a[1].X, 0.01);
        Assert.Equal(atKeel, b[0].X - a[0].X, 0.03);
        Assert.Equal(now.AfterEdge.Seam.AsEnumerable(), next.ForwardEdge.Seam.AsEnumerable());
        bool aft = now.Number > layer.MasterNumber;
        Assert.True((aft ? now : next).IsFitted);
        Assert.False((aft ? next : now).IsFitted);
        Assert.Equal(drawn.PlankLayers.First().MasterNumber, layer.MasterNumber);

        // What is not sawn yet keeps the stock's width from the fitted edge on, and one millimetre's turn is all that the plank takes.
        Plank free = aft ? next : now;
        Assert.Equal(150, free.WidestMm, 0.01);

        SeamCreep drift = plan.AsBuilt!.Drifts.Single(d => d.At == PanelEdge.Lower);
        Assert.Equal(aft, drift.GoingAft);
        Assert.Equal(atKeel, drift.Rows[0].OffMm, 1e-6);
        Assert.Equal(id, drift.SincePlank.ToString());
    }

    /// <summary>A creep of 0.4 mm a plank is found from the first plank whose seam a tape can tell, with its rate.</summary>
    [Fact]
    public void CreepIsFoundWhereItBeganAndByHowMuchAPlank()
    {
        // Where more is asked for, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        Job job = PlaneBottom.Job(Deadrise, 0, 9, 1, OffsetsAreTo.Outside);
        int master = WholeBottomTests.Planned(job).PlankLayers.First().MasterNumber;
        var seams = new List<MeasuredSeam>();
        for (int k = 0; k <= 8; k++)
        {
            string id = $"S1-{master + k:00}";
            (double keel, double chine) = Planned(job, id);
            seams.Add(new(Named.Plank(id), PanelEdge.Lower, keel + (0.4 * k)));
            seams.Add(new(Named.Plank(id), PanelEdge.Upper, chine));
        }

        BottomPlan plan = WholeBottomTests.Planned(
            job with
            {
                AsBuilt = AsBuiltSpec.None with { Seams = [.. seams] },
            }
        );
        SeamCreep keelDrift = plan.AsBuilt!.Drifts.Single(d => d.At == PanelEdge.Lower),
            chineDrift = plan.AsBuilt.Drifts.Single(d => d.At == PanelEdge.Upper);
        Assert.Equal(0.4, keelDrift.MmAPlank, 1e-6);

        // 0.4 × 4 = 1.6 is still within a sixteenth of an inch; the fifth is beyond it.
        Assert.Equal($"S1-{master + 5:00}", keelDrift.SincePlank.ToString());
        Assert.Null(chineDrift.SincePlank);

        // 8 × 0.4 along the keel is that times sin 45 square across; so much less for the planks that are left brings the last back.
        Assert.Equal(3.2 * Math.Sin(Math.PI / 4), keelDrift.AcrossMm, 0.02);
        int left = plan
            .PlankLayers.First()
            .Starboard.Count(p =>
                p.Number > master + 8
                && p.Kind == PlankKind.Full
                && p.Ends.Any(e => e.At == PanelEdge.Lower)
            );
        Assert.Equal(left, keelDrift.PlanksLeft);
        Assert.Equal(keelDrift.AcrossMm, keelDrift.NarrowerMm!.Value * left, 1e-9);
        Assert.Null(chineDrift.NarrowerMm);
        Assert.Empty(BottomLaws.Broken(plan));
    }

    /// <summary>Where keel and chine meet in a point nothing can move, and every cell that moved is listed with what it was.</summary>
    [Fact]
    public void APointAtTheStemStaysAndMovesAreListed()
    {
        // Where more is asked for, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        Job job = PlankFit.Tests.Support.DemoPlans.Of("tender").Job;
        BottomPlan plan = WholeBottomTests.Planned(
            With(job, new MeasuredGirth("4", Side.Starboard, 381.78 + 8))
        );
        GirthRow[] rows = [.. plan.AsBuilt!.Girths[Side.Starboard]];
        Assert.Equal(0, rows[0].MovedMm);
        Assert.InRange(rows[1].MovedMm, 0, 4);
        Assert.Equal(8, rows[9].MovedMm, 0.05);
        Assert.All(
            rows.Zip(rows.Skip(1)),
            r => Assert.True(r.Second.MovedMm > r.First.MovedMm - 0.01)
        );
        Assert.Empty(BottomLaws.Broken(plan));

        // Station by station the girth's change is the chine's own move along a straight section: the root of the two squares.
        foreach (GirthRow row in rows.Skip(1))
        {
            FairingMove[] at =
            [
                .. plan.AsBuilt.Moves[Side.Starboard].Where(m => m.Station == row.Station),
            ];
            Assert.Equal(2, at.Length);
            Assert.All(at, m => Assert.Equal("chine", m.Line));
            Assert.Equal(row.MovedMm, Math.Sqrt(at.Sum(m => m.MoveMm * m.MoveMm)), 0.05);
        }
    }

    [Fact]
    public void AReadingOfAnotherPlankIsRefused()
    {
        Job job = PlaneBottom.Job(Deadrise, 0, 9, 1, OffsetsAreTo.Outside);
        (double keel, _) = Planned(job, "S1-20");
        PlanResult result = BottomPlanner.Plan(
            job with
            {
                AsBuilt = AsBuiltSpec.None with
                {
                    Seams = [new(Named.Plank("S1-20"), PanelEdge.Lower, keel + 150)],
                },
            },
            stop: TestContext.Current.CancellationToken
        );
        Assert.Null(result.Plan);
        Assert.Equal("S1-20", result.Findings.Single().Where);
    }

    /// <summary>Where the seam was drawn, as a tape from station 0 reads it: asked of the plan with a reading that is certainly near.</summary>
    private static (double Keel, double Chine) Planned(Job job, string id)
    {
        Plank plank = WholeBottomTests.Planned(job).Find(id)!;
        double x0 = job.Offsets.Stations[0].PositionMm;
        BottomPlan probe = WholeBottomTests.Planned(
            job with
            {
                AsBuilt = AsBuiltSpec.None with
                {
                    Seams =
                    [
                        new(plank.Id, PanelEdge.Lower, plank.AfterEdge.Seam[0].X - x0),
                        new(plank.Id, PanelEdge.Upper, plank.AfterEdge.Seam[^1].X - x0),
                    ],
                },
            }
        );
        return (
            probe.AsBuilt!.Drifts.Single(d => d.At == PanelEdge.Lower).Rows[0].PlannedMm,
            probe.AsBuilt.Drifts.Single(d => d.At == PanelEdge.Upper).Rows[0].PlannedMm
        );
    }

    private static Job With(Job job, params MeasuredGirth[] girths) =>
        job with
        {
            AsBuilt = AsBuiltSpec.None with { Girths = [.. girths] },
        };
}
