using PlankFit.Planking.Findings;
using PlankFit.Planking.Girths;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Planking.Keel;

namespace PlankFit.Tests.Planking.AsBuilt;

/// <summary>A bottom that is planked to its end and was measured all the way: what crept is still told, though no plank is left to take it up.</summary>
public sealed class NoPlanksLeftTests
{
    [Fact]
    public void CreepIsToldWhereTheLastPlankIsOn()
    {
        Job job = PlaneBottom.Job(20, 0, 9, 1, OffsetsAreTo.Outside);
        BottomPlan drawn = WholeBottomTests.Planned(job);
        double from = job.Offsets.Stations[0].PositionMm;

        // Every plank from the foremost of these on that has an after seam at the keel, 6 mm aft of where it was drawn.
        Plank[] fitted =
        [
            .. drawn
                .PlankLayers.First()
                .Starboard.Where(p => p.AfterEdge.Seam.Length > 1)
                .Where(p => p.Ends.Any(e => e.At == PanelEdge.Lower))
                .TakeLast(6),
        ];
        // Planks of the inner layer head aft: the last at the keel may end in the transom, and none of full width comes after it there.
        MeasuredSeam[] seams =
        [
            .. fitted.Select(p => new MeasuredSeam(p.Id, PanelEdge.Lower, Planned(job, p) + 6)),
        ];
        BottomPlan plan = WholeBottomTests.Planned(
            job with
            {
                AsBuilt = AsBuiltSpec.None with { Seams = [.. seams] },
            }
        );
        SeamCreep drift = plan.AsBuilt!.Drifts.Single(d => d.At == PanelEdge.Lower && d.GoingAft);
        Assert.All(drift.Rows, r => Assert.Equal(6, r.OffMm, 0.02));
        Plank[] left =
        [
            .. plan
                .PlankLayers.First()
                .Starboard.Where(p =>
                    p.Number > fitted[^1].Number
                    && p.Kind != PlankKind.Corner
                    && p.Ends.Any(e => e.At == PanelEdge.Lower)
                ),
        ];
        Assert.Equal(left.Length, drift.PlanksLeft);
        Assert.InRange(left.Length, 0, 1);
        // With no plank left to say how it lies, what the tape reads along the edge is taken as it is.
        double slant = left.Length == 0 ? 1 : Math.Sin(Math.PI / 4);
        Assert.Equal(6 * slant, drift.AcrossMm, 0.05);
        Assert.Equal(left.Length == 0 ? null : drift.AcrossMm / left.Length, drift.NarrowerMm);

        double Planned(Job of, Plank plank)
        {
            BottomPlan probe = WholeBottomTests.Planned(
                of with
                {
                    AsBuilt = AsBuiltSpec.None with
                    {
                        Seams = [new(plank.Id, PanelEdge.Lower, plank.AfterEdge.Seam[0].X - from)],
                    },
                }
            );
            return probe.AsBuilt!.Drifts.Single(d => d.At == PanelEdge.Lower).Rows[0].PlannedMm;
        }
    }

    /// <summary>A girth is measured on the bare frames: where the table is to the inside of the planking, that is the table's own face.</summary>
    [Fact]
    public void AGirthOfATableToTheInsideIsOfTheTableItself()
    {
        Job job = PlaneBottom.Job(20, 0, 9, 1, OffsetsAreTo.Inside);
        double drawn =
            (PlaneBottom.ChineHalf - PlaneBottom.KeelHalf) / Math.Cos(20 * Math.PI / 180);
        GirthRow[] rows =
        [
            .. WholeBottomTests
                .Planned(
                    job with
                    {
                        AsBuilt = AsBuiltSpec.None with
                        {
                            Girths = [new MeasuredGirth("3", Side.Starboard, drawn + 6)],
                        },
                    }
                )
                .AsBuilt!.Girths[Side.Starboard],
        ];
        Assert.All(rows, r => Assert.Equal(drawn, r.DrawnMm, 1e-4));
        Assert.All(rows, r => Assert.Equal(drawn + 6, r.NowMm, 0.01));
    }
}
