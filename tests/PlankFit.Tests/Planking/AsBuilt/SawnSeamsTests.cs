using System.Collections.Immutable;
using System.Text.Json;
using PlankFit.Export.Lists;
using PlankFit.Export.Whole;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Planking.Keel;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.AsBuilt;

/// <summary>Planks that are sawn stay where they were sawn and under their numbers, whatever the job says since; the rest is laid on from them.</summary>
public sealed class SawnSeamsTests
{
    /// <summary>
    /// Ten planks of a curved bottom are sawn; then the stock turns out 4 mm narrower. The ten keep every byte of planking.json, the others are laid on from their two
    /// outer edges, in the new width.
    /// </summary>
    [Fact]
    public void AnotherStockMovesNoSawnPlankAndNoNumber()
    {
        // Where more is asked for, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        BottomPlan drawn = DemoPlans.Of("tender");
        int master = drawn.PlankLayers.First().MasterNumber;
        string[] ids = [.. Enumerable.Range(master - 4, 9).Select(n => $"S1-{n:00}")];
        BottomPlan plan = WholeBottomTests.Planned(
            Sawn(drawn, ids) with
            {
                Layers =
                [
                    .. drawn.Job.Layers.Select(
                        (l, i) => i == 0 ? (PlankLayerSpec)l with { WidthMm = 96 } : l
                    ),
                ],
            }
        );
        Dictionary<string, string> was = Texts(drawn),
            now = Texts(plan);
        Assert.All(ids, id => Assert.Equal(was[id], now[id]));
        PlankLayerPlan layer = plan.PlankLayers.First();
        Assert.Equal(master, layer.MasterNumber);
        Plank[] free = [.. layer.Starboard.Where(p => !p.IsSawn && p.Kind == PlankKind.Full)];
        Assert.True(free.Length > 15);
        Assert.All(free, p => Assert.InRange(p.WidestMm, 95, 96.01));

        // The neighbours' edges are the sawn planks' own.
        Plank first = plan.Find(ids[0])!,
            ahead = plan.Find($"S1-{master - 5:00}")!,
            last = plan.Find(ids[^1])!,
            behind = plan.Find($"S1-{master + 5:00}")!;
        Assert.False(ahead.IsSawn);
        Assert.InRange(Apart(first.ForwardEdge.Seam, ahead.AfterEdge.Seam), 0, 0.01);
        Assert.InRange(Apart(last.AfterEdge.Seam, behind.ForwardEdge.Seam), 0, 0.01);

        // Their ticks meet, those of the sawn and of the unsawn.
        string seam = last.Number.ToString(System.Globalization.CultureInfo.InvariantCulture);
        string[] Ticks(Plank p) =>
            [
                .. p
                    .Marks.Select(m => m.Label)
                    .Where(l => l.TrimEnd([.. "abcdefghijklmnopqrstuvwxyz"]) == seam),
            ];
        Assert.NotEmpty(Ticks(last));
        Assert.Equal(Ticks(last), Ticks(behind));

        // Port has nothing sawn: the new width from end to end.
        Assert.All(
            layer.Port.Where(p => p.Kind == PlankKind.Full),
            p => Assert.InRange(p.WidestMm, 95, 96.01)
        );

        // What holds for every bottom holds here, but that a sawn plank's neighbours share its points to a micrometre and not to the bit.
        Assert.DoesNotContain(
            BottomLaws.Broken(plan),
            b => !b.Contains("do not share one seam", StringComparison.Ordinal)
        );
    }

    /// <summary>Sawn planks with others between that are not: those share out what room is left, and where it is more than the stock that is told.</summary>
    [Fact]
    public void PlanksBetweenSawnOnesShareOutTheRoom()
    {
        Job job = PlaneBottom.Job(20, 0, 9, 1, OffsetsAreTo.Outside);
        BottomPlan drawn = WholeBottomTests.Planned(job);
        int master = drawn.PlankLayers.First().MasterNumber;
        string a = $"S1-{master:00}",
            b = $"S1-{master + 4:00}";
        BottomPlan plan = WholeBottomTests.Planned(
            Sawn(drawn, a, b) with
            {
                Layers =
                [
                    .. job.Layers.Select(l =>
                        l is PlankLayerSpec { Name: "inner" } p ? p with { WidthMm = 145 } : l
                    ),
                ],
            }
        );
        for (int n = master + 1; n < master + 4; n++)
        {
            Assert.Equal(150, plan.Find($"S1-{n:00}")!.WidestMm, 0.01);
        }

        Assert.Equal(145, plan.Find($"S1-{master + 6:00}")!.WidestMm, 0.01);
        Finding wide = Assert.Single(
            plan.Findings,
            f => f.Message.Contains("wider stock", StringComparison.Ordinal)
        );
        Assert.Contains("150 mm wide", wide.Message, StringComparison.Ordinal);
        Assert.Equal("layer inner, starboard", wide.Where);
    }

    /// <summary>The keel turns out 3 mm wide: worked by hand, each edge of a plank at 45 degrees in a bottom of 20 is 3 / cos 20 / sin 45 too long, and nothing is amiss across.</summary>
    [Fact]
    public void WhatASawnPlankHasTooMuchIsMeasured()
    {
        Job job = PlaneBottom.Job(20, 0, 9, 1, OffsetsAreTo.Outside) with
        {
            Keel = KeelSpec.None with
            {
                Layers = [PlaneBottom.KeelLayer("first layer", "inner", 9)],
            },
        };
        BottomPlan drawn = WholeBottomTests.Planned(job);
        double half = drawn.Keel!.Layers[0].Stations[0].WantedHalfWidthMm;
        Job sawn = Sawn(drawn, "S1-20");
        BottomPlan plan = WholeBottomTests.Planned(
            sawn with
            {
                AsBuilt = sawn.AsBuilt with
                {
                    KeelHalfWidths =
                    [
                        .. job.Offsets.Stations.Select(s => new MeasuredKeelHalfWidth(
                            "first layer",
                            s.Name,
                            Side.Starboard,
                            half + 3
                        )),
                    ],
                },
            }
        );
        SawnRow row = Assert.Single(plan.AsBuilt!.Sawn);
        double wanted = -3 / Math.Cos(20 * Math.PI / 180) / Math.Sin(Math.PI / 4);
        Assert.Equal("S1-20", row.Id.ToString());
        Assert.Equal(wanted, row.Fit.ForwardMm!.Value, 0.005);
        Assert.Equal(wanted, row.Fit.AfterMm!.Value, 0.005);
        Assert.Equal(0, row.Fit.AtKeelMm!.Value, 0.001);
        Assert.Equal(0, row.Fit.AtChineMm!.Value, 0.001);

        // Keel fit, chine left long by 25 square to it: 25 / sin 45 along the plank.
        Assert.Equal(25 / Math.Sin(Math.PI / 4), row.Fit.SpareMm, 0.01);
        Assert.Equal(-wanted, row.Fit.LongMm, 0.005);
    }

    /// <summary>The after seam of the plank at which work stopped is 4 mm aft at the keel and 2 at the chine; three more are sawn. They keep their width and lie as far off.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void PlanksFixedBeyondTheLastMeasuredOneShiftWithIt(bool sawn)
    {
        Job job = PlaneBottom.Job(20, 0, 9, 1, OffsetsAreTo.Outside);
        BottomPlan drawn = WholeBottomTests.Planned(job);
        int master = drawn.PlankLayers.First().MasterNumber;
        PlankId Id(int away) => PlankId.OfBottom(Side.Starboard, 1, master + away);
        PlankId[] ids = [.. Enumerable.Range(0, 6).Select(Id)];
        (double keel, double chine) = TapeOf(job, Id(2));
        AsBuiltSpec standing = (sawn ? Sawn(drawn, ids).AsBuilt : AsBuiltSpec.None) with
        {
            Fitted = sawn ? [] : [.. ids],
            Seams = [new(Id(2), PanelEdge.Lower, keel + 4), new(Id(2), PanelEdge.Upper, chine + 2)],
        };
        BottomPlan plan = WholeBottomTests.Planned(job with { AsBuilt = standing });

        // A plane bottom: the seam from which the rest is laid on is parallel to plank 2's, three widths from it.
        // What is sawn has its edges where they were drawn; there plank 2's seam as it lies is the drawn one with its ends moved along the hull.
        Vec3[] drawnSeam = Ends(drawn.Find(Id(2))!.AfterEdge),
            measured = sawn
                ? [drawnSeam[0] + (4 * Vec3.UnitX), drawnSeam[1] + (2 * Vec3.UnitX)]
                : Ends(plan.Find(Id(3))!.ForwardEdge),
            now = Ends(plan.Find(Id(6))!.ForwardEdge);
        Vec3 run = (measured[1] - measured[0]).Unit();
        double within = sawn ? 0.03 : 0.001;
        foreach (Vec3 end in now)
        {
            Vec3 off = end - measured[0];
            Assert.Equal(3 * 150, (off - (off.Dot(run) * run)).Norm, within);
        }

        // Which is the drawn one of plank 5, moved and turned as that of plank 2 was; 450 further along, its ends are off by a little more and less than 4 and 2.
        Vec3[] then = Ends(drawn.Find(Id(6))!.ForwardEdge);
        Assert.Equal(4, now[0].X - then[0].X, 1.0);
        Assert.Equal(2, now[1].X - then[1].X, 1.0);
        Assert.Equal(!sawn, plan.Find(Id(5))!.IsFitted);
        Assert.Equal(sawn, plan.Find(Id(5))!.IsSawn);
        Assert.False(plan.Find(Id(6))!.IsFixed);
        Assert.Equal(150, plan.Find(Id(6))!.WidestMm, 0.01);
        if (sawn)
        {
            // Plank 2's after seam lies off by 4 and 2 mm × sin 45 at its two ends and evenly between, its forward seam by half as much; at 45 degrees a plank of
            // 150 begins at its after seam's inboard end, 150 along the other, and ends at its forward seam's outboard end, 150 short of the other's.
            double length = drawn.Find(Id(2))!.AfterEdge.SeamLengthMm,
                slant = Math.Sin(Math.PI / 4);
            double Off(double along) => slant * (4 - (2 * along / length));
            SawnFit fit = plan.AsBuilt!.Sawn.Single(r => r.Id == Id(2)).Fit;
            Assert.Equal(Off(0) - (Off(150) / 2), fit.AtKeelMm!.Value, 0.02);
            Assert.Equal(Off(length - 150) - (Off(length) / 2), fit.AtChineMm!.Value, 0.02);
            Assert.Equal(0, plan.AsBuilt.Sawn.Single(r => r.Id == Id(4)).Fit.AtKeelMm!.Value, 0.01);
        }
        else
        {
            Assert.Empty(BottomLaws.Broken(plan));
        }
    }

    /// <summary>Work begun away from the master: the rest is laid on from both edges of what is fitted, not from the master.</summary>
    [Fact]
    public void WorkBegunElsewhereThanAtTheMasterGoesOnBothWays()
    {
        Job job = PlaneBottom.Job(20, 0, 9, 1, OffsetsAreTo.Outside);
        BottomPlan drawn = WholeBottomTests.Planned(job);
        int master = drawn.PlankLayers.First().MasterNumber,
            from = master - 9;
        PlankId Id(int n) => PlankId.OfBottom(Side.Starboard, 1, n);
        PlankId[] ids = [.. Enumerable.Range(from, 4).Select(Id)];
        (double keel, double chine) = TapeOf(job, ids[^1]);
        BottomPlan plan = WholeBottomTests.Planned(
            job with
            {
                AsBuilt = AsBuiltSpec.None with
                {
                    Fitted = [.. ids],
                    Seams =
                    [
                        new(ids[^1], PanelEdge.Lower, keel + 3),
                        new(ids[^1], PanelEdge.Upper, chine + 3),
                    ],
                },
            }
        );
        Assert.Equal(
            ids,
            plan.PlankLayers.First().Starboard.Where(p => p.IsFitted).Select(p => p.Id)
        );
        Assert.Empty(BottomLaws.Broken(plan));

        // All of them 3 mm aft, the master's too: it is not on the hull, and follows.
        foreach (PlankId id in new[] { ids[0], Id(master), Id(master + 8) })
        {
            Vec3[] then = Ends(drawn.Find(id)!.AfterEdge),
                now = Ends(plan.Find(id)!.AfterEdge);
            Assert.Equal(3, now[0].X - then[0].X, 0.05);
            Assert.Equal(3, now[1].X - then[1].X, 0.05);
        }
    }

    [Fact]
    public void ARecordOfTwoLayOutsIsRefused()
    {
        BottomPlan drawn = DemoPlans.Of("tender");
        SawnPlank a = RecordsOfSawn.Of(drawn, "S1-12"),
            b = RecordsOfSawn.Of(drawn, "S1-18");
        PlanResult result = BottomPlanner.Plan(
            drawn.Job with
            {
                AsBuilt = AsBuiltSpec.None with
                {
                    Sawn = [a with { Id = b.Id }, b with { Id = a.Id }],
                },
            },
            stop: TestContext.Current.CancellationToken
        );
        Assert.Null(result.Plan);
        Assert.Contains("two lay-outs", result.Findings.Single().Message);
    }

    [Fact]
    public void AFittedPlankThatTheLayOutDoesNotHaveIsRefused()
    {
        PlanResult result = BottomPlanner.Plan(
            DemoPlans.Of("tender").Job with
            {
                AsBuilt = AsBuiltSpec.None with { Fitted = [Named.Plank("S1-99")] },
            },
            stop: TestContext.Current.CancellationToken
        );
        Assert.Null(result.Plan);
        Assert.Contains("no plank 99", result.Findings.Single().Message);
    }

    private static Job Sawn(BottomPlan drawn, params string[] ids) =>
        Sawn(drawn, [.. ids.Select(Named.Plank)]);

    private static Job Sawn(BottomPlan drawn, params PlankId[] ids) =>
        drawn.Job with
        {
            AsBuilt = AsBuiltSpec.None with
            {
                Sawn = [.. ids.Select(id => RecordsOfSawn.Of(drawn, id))],
            },
        };

    private static Vec3[] Ends(PlankEdge edge) => [edge.Seam[0], edge.Seam[^1]];

    /// <summary>The most by which points of one line lie off the other.</summary>
    private static double Apart(ImmutableArray<Vec3> line, ImmutableArray<Vec3> other) =>
        line.Max(p => other.Zip(other.Skip(1)).Min(s => SegmentDistance(p, s.First, s.Second)));

    private static double SegmentDistance(Vec3 p, Vec3 a, Vec3 b)
    {
        Vec3 run = b - a;
        double t = Math.Clamp((p - a).Dot(run) / run.NormSquared, 0, 1);
        return (a + (t * run)).ChordTo(p);
    }

    /// <summary>Where a seam was drawn, as a tape from station 0 reads it.</summary>
    private static (double Keel, double Chine) TapeOf(Job job, PlankId id)
    {
        Plank plank = WholeBottomTests.Planned(job).Find(id)!;
        BottomPlan probe = WholeBottomTests.Planned(
            job with
            {
                AsBuilt = AsBuiltSpec.None with
                {
                    Seams =
                    [
                        new(id, PanelEdge.Lower, plank.AfterEdge.Seam[0].X),
                        new(id, PanelEdge.Upper, plank.AfterEdge.Seam[^1].X),
                    ],
                },
            }
        );
        return (
            probe.AsBuilt!.Drifts.Single(d => d.At == PanelEdge.Lower).Rows[0].PlannedMm,
            probe.AsBuilt.Drifts.Single(d => d.At == PanelEdge.Upper).Rows[0].PlannedMm
        );
    }

    /// <summary>Each plank as planking.json has it, without the word that it is sawn.</summary>
    private static Dictionary<string, string> Texts(BottomPlan plan)
    {
        using var stream = new MemoryStream();
        PlankingJson.Write(OnPlanks.Of(plan), stream);
        using var document = JsonDocument.Parse(stream.ToArray());
        return document
            .RootElement.GetProperty("planks")
            .EnumerateArray()
            .ToDictionary(
                p => p.GetProperty("id").GetString()!,
                p => p.GetRawText().Replace("\n   \"sawn\": true,", "", StringComparison.Ordinal)
            );
    }
}
