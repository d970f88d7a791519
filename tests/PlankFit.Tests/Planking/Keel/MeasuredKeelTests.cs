using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.KeelCheck;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Planking.Keel;

/// <summary>A keel as measured: found where it is out and nowhere else, and the planks cut to it.</summary>
public sealed class MeasuredKeelTests
{
    [Fact]
    public void TwoMillimetresOutAtTwoStationsAreFoundThereAndNowhereElse()
    {
        Job job = Job(m => m is "3" or "4" ? 2 : 0, Side.Port);
        BottomPlan plan = WholeBottomTests.Planned(job);
        string[] told =
        [
            .. plan
                .Findings.Where(f => f.Where.StartsWith("keel", StringComparison.Ordinal))
                .Select(f => f.Where),
        ];
        Assert.Equal(
            ["keel, first layer, station 3, port", "keel, first layer, station 4, port"],
            told
        );
        Assert.All(
            plan.Keel!.Layers[0].Stations,
            r =>
                Assert.Equal(
                    r is { Side: Side.Port, Station: "3" or "4" } ? 2 : 0,
                    r.TakeOffSideMm,
                    1e-9
                )
        );
        KeelStation out3 = plan
            .Keel.Layers[0]
            .Stations.Single(r => r is { Side: Side.Port, Station: "3" });
        Assert.Equal(2 * Math.Tan(20 * Math.PI / 180), out3.ProudMm, 1e-6);
    }

    /// <summary>Starboard keeps its planks to the last digit; port planks between the two stations are the shorter by 2 mm over the sine of their angle.</summary>
    [Fact]
    public void PlanksAreCutToTheKeelThatIsThereOnItsOwnSide()
    {
        BottomPlan plain = WholeBottomTests.Planned(Job(null, Side.Port)),
            plan = WholeBottomTests.Planned(Job(_ => 2, Side.Port));
        PlankLayerPlan before = plain.PlankLayers.First(),
            after = plan.PlankLayers.First();
        Assert.NotNull(after.PortApart);
        Assert.Empty(BottomLaws.Broken(plan));
        int shorter = 0;
        foreach ((Plank a, Plank b) in before.Starboard.Zip(after.Starboard))
        {
            Assert.Equal(a.FlatCut.AsEnumerable(), b.FlatCut.AsEnumerable());
        }

        foreach ((Plank a, Plank b) in before.Port.Zip(after.Port))
        {
            if (
                a.Kind == PlankKind.Full
                && a.Ends.Length == 2
                && a.Ends[0].At == PanelEdge.Lower
                && a.Ends[1].At == PanelEdge.Upper
            )
            {
                // 2 mm athwart is 2 / cos 20 in the bottom, and that over sin 45 along a plank.
                double change = 2 / Math.Cos(20 * Math.PI / 180) / Math.Sin(45 * Math.PI / 180);
                Assert.Equal(-change, b.NetLengthMm - a.NetLengthMm, 0.002);
                Assert.Equal(
                    -change,
                    plan.Keel!.Layers[0].PlankEnds.Single(e => e.PlankId == b.Id).LengthChangeMm,
                    0.002
                );
                shorter++;
            }
        }

        Assert.True(shorter > 20, $"{shorter} planks");
    }

    /// <summary>What is measured to starboard alone gives to starboard what the same to port alone gives to port, mirrored.</summary>
    [Fact]
    public void TheTwoSidesAreTreatedAlike()
    {
        static double Out(string station) => station is "2" or "5" ? 3 : -1;
        PlankLayerPlan port = WholeBottomTests.Planned(Job(Out, Side.Port)).PlankLayers.First(),
            starboard = WholeBottomTests.Planned(Job(Out, Side.Starboard)).PlankLayers.First();
        foreach ((Plank p, Plank s) in port.Port.Zip(starboard.Starboard))
        {
            Assert.Equal(p.NetLengthMm, s.NetLengthMm);
            Assert.Equal(
                p.Outline.Select(v => v.MirroredInY()).OrderBy(v => v.X).ThenBy(v => v.Y),
                s.Outline.OrderBy(v => v.X).ThenBy(v => v.Y)
            );
        }
    }

    private static Job Job(Func<string, double>? outBy, Side side)
    {
        Job job = PlaneBottom.Job(20, 0, 9, 1, OffsetsAreTo.Outside) with
        {
            Keel = KeelSpec.None with
            {
                Layers =
                [
                    PlaneBottom.KeelLayer("first layer", "inner", 9),
                    PlaneBottom.KeelLayer("second layer", "outer", 9),
                ],
            },
        };
        if (outBy is null)
        {
            return job;
        }

        double half = WholeBottomTests.Planned(job).Keel!.Layers[0].Stations[0].WantedHalfWidthMm;
        return job with
        {
            AsBuilt = AsBuiltSpec.None with
            {
                KeelHalfWidths =
                [
                    .. job.Offsets.Stations.Select(s => new MeasuredKeelHalfWidth(
                        "first layer",
                        s.Name,
                        side,
                        half + outBy(s.Name)
                    )),
                ],
            },
        };
    }
}
