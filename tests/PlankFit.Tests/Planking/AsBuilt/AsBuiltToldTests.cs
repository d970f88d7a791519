using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Girths;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Planking.Keel;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.AsBuilt;

/// <summary>What is said of girths and of seams that crept, and the small sums behind it.</summary>
public sealed class AsBuiltToldTests
{
    private static readonly double Girth =
        (PlaneBottom.ChineHalf - PlaneBottom.KeelHalf) / Math.Cos(20 * Math.PI / 180);

    /// <summary>Eight girths on a fair line but for one: which, and to which side. The second and the last but one can be judged as well.</summary>
    [Theory]
    [InlineData(1, 6, "6 mm beyond")]
    [InlineData(6, -6, "6 mm short of")]
    [InlineData(4, 6, "6 mm beyond")]
    public void AGirthOffTheRunOfTheOthersIsNamed(int at, double off, string says)
    {
        Finding[] told = OfGirths(i => i == at ? off : 0);
        Assert.Contains(
            told,
            f =>
                f.Severity == Severity.Warning
                && f.Where == $"girth, station {at}, starboard"
                && f.Message.Contains(says, StringComparison.Ordinal)
        );
        Assert.Contains(
            told,
            f =>
                f.Where == "girths, starboard"
                && f.Message.Contains(
                    $"the most at station {at}, by 6 mm {(off < 0 ? "inward" : "outward")}"
                )
        );
    }

    /// <summary>All of them 26 mm off is a tape misread, 24 mm a hull; a fair row is not called unfair.</summary>
    [Theory]
    [InlineData(26, 8)]
    [InlineData(-26, 8)]
    [InlineData(24, 0)]
    public void AGirthThatIsPastBeliefIsToBeMeasuredAgain(double off, int warnings)
    {
        Finding[] told = [.. OfGirths(_ => off).Where(f => f.Severity == Severity.Warning)];
        Assert.Equal(warnings, told.Length);
        Assert.All(
            told,
            f =>
                Assert.StartsWith(
                    $"it was measured 26 mm {(off > 0 ? "longer" : "shorter")} than drawn",
                    f.Message
                )
        );
    }

    /// <summary>Seams that crept outward at one edge want planks planed at that edge; seams that crept back want nothing planed.</summary>
    [Theory]
    [InlineData(PanelEdge.Lower, 4, "off the keel end of each")]
    [InlineData(PanelEdge.Upper, 4, "off the chine end of each")]
    [InlineData(PanelEdge.Lower, -4, "Planks take less room")]
    public void AdviceNamesTheEdgeAtWhichSeamsCrept(PanelEdge edge, double off, string says)
    {
        Job job = PlaneBottom.Job(20, 0, 9, 1, OffsetsAreTo.Outside);
        job = job with { Layers = [job.Layers[0]] };
        BottomPlan drawn = WholeBottomTests.Planned(job);
        string id = $"S1-{drawn.PlankLayers.First().MasterNumber + 5:00}";
        Vec3 end =
            edge == PanelEdge.Lower
                ? drawn.Find(id)!.AfterEdge.Seam[0]
                : drawn.Find(id)!.AfterEdge.Seam[^1];
        SeamCreep Drift(double mm) =>
            WholeBottomTests
                .Planned(With(job, new MeasuredSeam(Named.Plank(id), edge, mm)))
                .AsBuilt!.Drifts.Single();
        double planned = Drift(end.X).Rows[0].PlannedMm;
        BottomPlan plan = WholeBottomTests.Planned(
            With(job, new MeasuredSeam(Named.Plank(id), edge, planned + off))
        );
        SeamCreep drift = Assert.Single(plan.AsBuilt!.Drifts);
        Finding told = Assert.Single(
            plan.AsBuilt.Findings,
            f => f.Message.StartsWith("the seams have crept", StringComparison.Ordinal)
        );
        Assert.Contains(says, told.Message, StringComparison.Ordinal);
        Assert.Contains(off > 0 ? "crept aft" : "crept forward", told.Message);

        // At 45 degrees what the tape reads along the edge is that times sin 45 square across; the sixth plank from the master carries all of it.
        Assert.Equal(off * Math.Sin(Math.PI / 4), drift.AcrossMm, 0.05);
        Assert.Equal(off / 6, drift.MmAPlank, 1e-9);

        // Of the planks left those count that end at this edge.
        Assert.Equal(
            plan.PlankLayers.First()
                .Starboard.Count(p =>
                    p.Number > FromId(id)
                    && p.Kind != PlankKind.Corner
                    && p.Ends.Any(e => e.At == edge)
                ),
            drift.PlanksLeft
        );
    }

    [Theory]
    [InlineData("S1-20", 1, 0.6, 0.6)]
    [InlineData("S1-20", 4, 6, 1.5)]
    [InlineData("S1-20", 0, 6, null)]
    [InlineData("S1-20", 4, 0, null)]
    [InlineData("S1-20", 4, -6, null)]
    [InlineData(null, 4, 6, null)]
    public void WhatIsTakenUpIsSharedByThePlanksLeft(
        string? since,
        int left,
        double across,
        double? each
    ) =>
        Assert.Equal(
            each,
            new SeamCreep(
                1,
                Side.Port,
                PanelEdge.Lower,
                true,
                [],
                0,
                since is null ? null : Named.Plank(since)
            )
            {
                PlanksLeft = left,
                AcrossMm = across,
            }.NarrowerMm
        );

    /// <summary>Each thing that can be measured, alone, is something measured; what is fitted or sawn is not, but the hull no longer stands as drawn.</summary>
    [Fact]
    public void AHullIsAsDrawnWhereNothingAtAllIsKnownOfIt()
    {
        AsBuiltSpec none = AsBuiltSpec.None;
        Assert.True(none is { NothingMeasured: true, IsEmpty: true });
        AsBuiltSpec[] measured =
        [
            none with
            {
                KeelHalfWidths = [new("first", "3", Side.Port, 40)],
            },
            none with
            {
                Girths = [new("3", Side.Port, 900)],
            },
            none with
            {
                Seams = [new(Named.Plank("S1-20"), PanelEdge.Lower, 100)],
            },
        ];
        Assert.All(measured, s => Assert.False(s.NothingMeasured || s.IsEmpty));
        AsBuiltSpec fitted = none with { Fitted = [Named.Plank("S1-20")] };
        Assert.True(fitted is { NothingMeasured: true, IsEmpty: false });
    }

    /// <summary>
    /// A bottom of one hollow section all along: its girth is the length of that section, added up here in 20 000 chords of the lofted surface. The planner's few
    /// chords alone would be some hundredths of a millimetre short.
    /// </summary>
    [Fact]
    public void TheGirthOfAHollowSectionIsTheLengthOfItsCurve()
    {
        Job job = Hollow();
        BottomPlan plan = WholeBottomTests.Planned(
            job with
            {
                AsBuilt = AsBuiltSpec.None with { Girths = [new("3", Side.Starboard, 960)] },
            }
        );
        LoftedSurface surface = plan.PortHull.Surface;
        double u = plan.PortHull.Stations[3].U,
            chine = surface.UpperV(u),
            length = 0;
        const int n = 20_000;
        for (int i = 0; i < n; i++)
        {
            length += surface.At(u, chine * i / n).P.ChordTo(surface.At(u, chine * (i + 1) / n).P);
        }

        GirthRow row = plan.AsBuilt!.Girths[Side.Starboard][3];
        Assert.Equal(length, row.DrawnMm, 0.001);
        Assert.Equal(960, row.NowMm, 0.002);
    }

    private static int FromId(string id) =>
        int.Parse(id[3..], System.Globalization.CultureInfo.InvariantCulture);

    private static Finding[] OfGirths(Func<int, double> off)
    {
        Job job = PlaneBottom.Job(20, 0, 9, 1, OffsetsAreTo.Inside);
        return
        [
            .. WholeBottomTests
                .Planned(
                    job with
                    {
                        Layers = [(PlankLayerSpec)job.Layers[0] with { WidthMm = 400 }],
                        AsBuilt = AsBuiltSpec.None with
                        {
                            Girths =
                            [
                                .. job.Offsets.Stations.Select(
                                    (s, i) =>
                                        new MeasuredGirth(s.Name, Side.Starboard, Girth + off(i))
                                ),
                            ],
                        },
                    }
                )
                .AsBuilt!.Findings,
        ];
    }

    private static Job With(Job job, MeasuredSeam seam) =>
        job with
        {
            AsBuilt = AsBuiltSpec.None with { Seams = [seam] },
        };

    /// <summary>The plane bottom with a line between that lies 60 mm under its chord.</summary>
    private static Job Hollow()
    {
        Job job = PlaneBottom.Job(20, 0, 9, 1, OffsetsAreTo.Inside);
        OffsetLine chine = job.Offsets.Find("chine")!;
        OffsetLine between = chine with
        {
            Name = "between",
            HeightsMm = [.. chine.HeightsMm.Select(h => (h / 2) - 60)],
            HalfBreadthsMm = [.. chine.HalfBreadthsMm.Select(b => (b + PlaneBottom.KeelHalf) / 2)],
        };
        return job with
        {
            Layers = [(PlankLayerSpec)job.Layers[0] with { WidthMm = 100 }],
            Offsets = new(job.Offsets.Stations, job.Offsets.Lines.Add(between)),
            Hull = job.Hull with { Panel = job.Hull.Panel with { Between = ["between"] } },
        };
    }
}
