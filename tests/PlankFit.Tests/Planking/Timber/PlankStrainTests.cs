using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Timber;
using PlankFit.Planking.Whole;
using PlankFit.Planking.Wood;

namespace PlankFit.Tests.Planking.Timber;

/// <summary>What is said of whole bottoms: strain along the grain in closed form, movement, findings.</summary>
public sealed class PlankStrainTests
{
    /// <summary>
    /// On H2 with a wood, each plank's strain is that of the worst place of its seams, t |kn|/2 + |K| w²/12 with kn and K in closed form and directions taken from the
    /// seam's points; its own line lies between, where both change by little.
    /// </summary>
    [Fact]
    public void StrainAlongTheGrainOnTheWarpedBottom()
    {
        const double t = 9;
        BottomPlan plan = WholeBottomTests.Planned(
            Hypar.Job(t) with
            {
                Timber = TimberSpec.Default with { Species = Judges.Fir },
            }
        );
        PlankLayerPlan layer = plan.PlankLayers.Single();
        int held = 0;
        foreach (
            Plank plank in layer.Starboard.Where(p => p.ForwardEdge.Exists && p.AfterEdge.Exists)
        )
        {
            double worst = 0;
            foreach (PlankEdge edge in new[] { plank.ForwardEdge, plank.AfterEdge })
            {
                ImmutableArray<Vec3> seam = edge.Seam;
                for (int i = 1; i < seam.Length; i++)
                {
                    Vec3 d = seam[i] - seam[i - 1],
                        at = 0.5 * (seam[i] + seam[i - 1]);
                    double k = Hypar.NormalCurvature(at.X, at.Y, d.X, d.Y);
                    worst = Math.Max(
                        worst,
                        (t * Math.Abs(k) / 2)
                            + (
                                Math.Abs(Hypar.Gauss(at.X, at.Y))
                                * plank.WidestMm
                                * plank.WidestMm
                                / 12
                            )
                    );
                }
            }

            // The layer's middle lies t/2 off the closed form's surface: parts in a thousand.
            Assert.Equal(worst * 100, plank.Bend.GrainStrainPercent, worst * 100 * 0.02);
            PlankTimber timber = plan.Timber!.Of(plank.Id)!;
            Assert.Equal(worst / 0.0025, timber.Bend.StrainIndex!.Value, 0.02 * worst / 0.0025);
            Assert.Equal(
                Math.Sqrt(12 * 0.001 / (plank.Bend.MostGaussPerMm2)),
                timber.Bend.WidestMm!.Value,
                1e-6
            );
            held++;
        }

        Assert.True(held > 20);
    }

    /// <summary>The verdict that stands on the card is the one that the timber gives, and one without wood is as it was.</summary>
    [Fact]
    public void OneVerdictEverywhere()
    {
        Job job = Hypar.Job(45);
        BottomPlan bare = WholeBottomTests.Planned(job),
            oak = WholeBottomTests.Planned(
                job with
                {
                    Timber = TimberSpec.Default with
                    {
                        Species = "white-oak",
                        Grade = BoardGrade.Knotty,
                    },
                }
            );
        Assert.Null(bare.Timber);
        string[] rows = [.. BendLimits.Default.Bend.Select(b => b.Verdict), "refuse"];
        int harder = 0;
        foreach (Plank plank in oak.PlankLayers.Single().Starboard)
        {
            int with = Rank(plank.Bend.Verdict),
                without = Rank(bare.Find(plank.Id)!.Bend.Verdict);
            Assert.True(with >= without, $"{plank.Id}: {plank.Bend.Verdict}");
            harder += with > without ? 1 : 0;
            BendWay way = oak.Timber!.Of(plank.Id)!.Bend.Way;
            Assert.Equal(
                plank.Bend.Verdict.StartsWith("refuse", StringComparison.Ordinal),
                way >= BendWay.LaminateThinner
            );
            Assert.Equal(
                plank.Bend.Verdict.StartsWith("soak", StringComparison.Ordinal),
                way == BendWay.SoakOrSteam
            );
        }

        Assert.True(harder > 5, $"{harder} planks judged harder for knots");
        int Rank(string verdict) =>
            Array.FindLastIndex(
                rows,
                r => verdict == r || verdict.StartsWith(r + ",", StringComparison.Ordinal)
            );
    }

    /// <summary>Forty planks of 150 mm flat-sawn Douglas-fir, four percent: 6000 × 0.00267 × 4 = 64.1 mm; quarter-sawn 39.6; plywood 4.8.</summary>
    [Theory]
    [InlineData("douglas-fir", Grain.Flat, 0.00267)]
    [InlineData("douglas-fir", Grain.Quarter, 0.00165)]
    [InlineData("douglas-fir-plywood", Grain.Flat, 0.0002)]
    public void TheWholeRunMoves(string wood, Grain grain, double coefficient)
    {
        BottomPlan plan = WholeBottomTests.Planned(
            Judges.Job(
                wood,
                TimberSpec.Default with
                {
                    Grain = grain,
                    Workshop = new(8, null),
                    Service = new(12, null),
                }
            )
        );
        PlankLayerPlan layer = plan.PlankLayers.First();
        LayerTimber timber = plan.Timber!.Of(layer)!;
        RunMovement run = timber.Movement!;
        Assert.Equal(layer.Starboard.Length, run.Planks);
        Assert.Equal(layer.Starboard.Sum(p => p.WidestMm), run.WidthMm, 1e-9);
        Assert.Equal(run.WidthMm * coefficient * 4, run.ChangeMm, 1e-9);
        Plank master = layer.Starboard.First(p => p.Kind == PlankKind.Master);
        Assert.Equal(150, master.WidestMm, 1e-3);
        Assert.Equal(
            master.WidestMm * coefficient * 4,
            plan.Timber.Of(master.Id)!.Movement!.AcrossMm,
            1e-9
        );
        Assert.Equal(
            grain == Grain.Flat && !wood.EndsWith("plywood", StringComparison.Ordinal)
                    ? 9 * 0.00165 * 4
                : grain == Grain.Quarter ? 9 * 0.00267 * 4
                : null,
            plan.Timber.Of(master.Id)!.Movement!.ThroughMm
        );
    }

    [Theory]
    [InlineData(13.0, 10.0, "too wet for epoxy")]
    [InlineData(9.0, 16.0, "outside 6 % to 14 %")]
    [InlineData(5.0, 10.0, "outside 6 % to 14 %")]
    [InlineData(9.0, null, "movement needs both")]
    public void MoisturesThatAskForCareAreFound(double workshop, double? service, string words)
    {
        TimberPlan timber = WholeBottomTests
            .Planned(
                Judges.Job(
                    "douglas-fir",
                    TimberSpec.Default with
                    {
                        Workshop = new(workshop, null),
                        Service = service is { } s ? new(s, null) : null,
                    }
                )
            )
            .Timber!;
        Assert.Contains(timber.Findings, f => f.Message.Contains(words, StringComparison.Ordinal));
    }

    /// <summary>A finding that says soak does not say try it dry, nor one that refuses.</summary>
    [Fact]
    public void FindingsAdviseWhatTheirVerdictAsks()
    {
        BottomPlan plan = WholeBottomTests.Planned(
            Hypar.Job(45) with
            {
                Timber = TimberSpec.Default with
                {
                    Species = Judges.Fir,
                    Grade = BoardGrade.Knotty,
                },
            }
        );
        int soaked = 0;
        foreach (Finding f in plan.Findings.Where(f => f.Severity == Severity.Warning))
        {
            bool soak = f.Message.Contains(": soak", StringComparison.Ordinal),
                refuse = f.Message.Contains(": refuse", StringComparison.Ordinal);
            soaked += soak ? 1 : 0;
            if (soak || refuse)
            {
                Assert.DoesNotContain("dry, pulled", f.Message, StringComparison.Ordinal);
                Assert.Contains(
                    soak ? "meter them before glue" : "Do not force them",
                    f.Message,
                    StringComparison.Ordinal
                );
            }
        }

        Assert.True(soaked > 0);
    }

    [Fact]
    public void AWoodOfWhichLittleIsKnownSaysWhatIsMissing()
    {
        TimberPlan timber = WholeBottomTests.Planned(Judges.Job("teak")).Timber!;
        Assert.Contains(
            timber.Findings,
            f =>
                f.Severity == Severity.Warning
                && f.Message.Contains("density", StringComparison.Ordinal)
                && f.Message.Contains("stiffness", StringComparison.Ordinal)
        );
        Assert.Null(timber.Whole);
        Assert.All(timber.Layers[0].Planks, p => Assert.Null(p.Bend.ClampNewtons));
    }
}
