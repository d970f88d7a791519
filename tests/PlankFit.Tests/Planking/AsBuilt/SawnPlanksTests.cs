using System.Collections.Immutable;
using PlankFit.Export.Lists;
using PlankFit.Export.Whole;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Reading.AsBuilt;
using PlankFit.Tests.Planking.Keel;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.AsBuilt;

/// <summary>Planks that are sawn: the record gives back every digit, no lay-out moves them, and what no longer fits is told.</summary>
public sealed class SawnPlanksTests
{
    [Fact]
    public void TheRecordGivesBackEveryDigit()
    {
        BottomPlan plan = WholeBottomTests.Planned(Job());
        SawnPlank[] sawn = [.. Sawn(plan, "S1-20", "P2-07", "S1-01")];
        (ImmutableArray<SawnPlank> read, Finding? fault, _) = SawnPlanksFile.Read(
            SawnPlanksFile.Write(sawn),
            "sawn-planks.json"
        );
        Assert.Null(fault);
        Assert.Equal(["P2-07", "S1-01", "S1-20"], read.Select(p => p.Id.ToString()));
        foreach (SawnPlank was in sawn)
        {
            SawnPlank back = read.Single(p => p.Id == was.Id);
            Assert.Equal(was.Shape.Outline.AsEnumerable(), back.Shape.Outline.AsEnumerable());
            Assert.Equal(was.Shape.FlatNet.AsEnumerable(), back.Shape.FlatNet.AsEnumerable());
            Assert.Equal(was.Shape.FlatCut.AsEnumerable(), back.Shape.FlatCut.AsEnumerable());
            Assert.Equal(was.Shape.After.Seam.AsEnumerable(), back.Shape.After.Seam.AsEnumerable());
            Assert.Equal(
                was.Shape.Forward.Flat.AsEnumerable(),
                back.Shape.Forward.Flat.AsEnumerable()
            );
            foreach ((PlankEnd a, PlankEnd b) in was.Form.Ends.Zip(back.Form.Ends))
            {
                Assert.Equal((a.At, a.Cut, a.CutDegrees), (b.At, b.Cut, b.CutDegrees));
                Assert.Equal((a.BevelDegrees, a.OverhangMm), (b.BevelDegrees, b.OverhangMm));
                Assert.Equal(a.OuterLine.AsEnumerable(), b.OuterLine.AsEnumerable());
            }
        }
    }

    [Fact]
    public void NothingChangesWhereNothingHasMoved()
    {
        BottomPlan plan = WholeBottomTests.Planned(Job());
        BottomPlan again = WholeBottomTests.Planned(With(Job(), [.. Sawn(plan, "S1-20", "P2-07")]));
        Assert.Equal(
            Text(plan),
            Text(again).Replace("\n   \"sawn\": true,", "", StringComparison.Ordinal)
        );
        Assert.DoesNotContain(
            again.Findings,
            f => f.Message.Contains("sawn", StringComparison.Ordinal)
        );
    }

    /// <summary>The keel at station 4 turns out 3 mm wide to starboard: the sawn plank keeps its shape and is 3 / cos b / sin 45 too long, where its uncut neighbour is right.</summary>
    [Fact]
    public void ASawnPlankKeepsItsShapeAndWhatNoLongerFitsIsTold()
    {
        Job job = Job() with
        {
            Keel = KeelSpec.None with
            {
                Layers = [PlaneBottom.KeelLayer("first layer", "inner", 9)],
            },
        };
        BottomPlan drawn = WholeBottomTests.Planned(job);
        double half = drawn.Keel!.Layers[0].Stations[0].WantedHalfWidthMm;
        BottomPlan plan = WholeBottomTests.Planned(
            With(job, [.. Sawn(drawn, "S1-20", "P1-20")]) with
            {
                AsBuilt = AsBuiltSpec.None with
                {
                    Sawn = [.. Sawn(drawn, "S1-20", "P1-20")],
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
        Plank sawn = plan.Find("S1-20")!;
        Assert.True(sawn.IsSawn);
        Assert.Equal(drawn.Find("S1-20")!.FlatCut.AsEnumerable(), sawn.FlatCut.AsEnumerable());
        Assert.NotEqual(drawn.Find("S1-21")!.NetLengthMm, plan.Find("S1-21")!.NetLengthMm, 0.5);
        Finding told = Assert.Single(
            plan.Findings,
            f => f.Message.StartsWith("it is sawn", StringComparison.Ordinal)
        );
        Assert.Equal("S1-20", told.Where);

        // 3 mm athwart in a bottom of 20 degrees, square to the keel's trace: 3 / cos 20 = 3.19, to half a millimetre.
        Assert.Contains("3 mm long", told.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void APlankOfALayerThatTheJobNoLongerHasIsNamed()
    {
        BottomPlan plan = WholeBottomTests.Planned(Job());
        SawnPlank stray = Sawn(plan, "S1-20").Single() with { Id = Named.Plank("S9-20") };
        Assert.Contains(
            WholeBottomTests.Planned(With(Job(), [stray])).Findings,
            f =>
                f.Where == "S9-20"
                && f.Message.Contains("it is of layer 9, and the job has 2 of planks")
        );
    }

    /// <summary>A plank keeps the number that it was sawn under, wherever a count from forward would have put it: the others are counted from it.</summary>
    [Fact]
    public void NumbersAreCountedFromWhatIsSawn()
    {
        BottomPlan plan = WholeBottomTests.Planned(Job());
        SawnPlank sawn = Sawn(plan, "S1-20").Single() with { Id = Named.Plank("S1-99") };
        BottomPlan again = WholeBottomTests.Planned(With(Job(), [sawn]));
        Plank[] row = [.. again.PlankLayers.First().Starboard];
        Assert.Equal(plan.PlankLayers.First().Starboard.Length, row.Length);
        Assert.Equal("S1-99", Assert.Single(row, p => p.IsSawn).Id.ToString());
        Assert.Equal(plan.Find("S1-21")!.NetLengthMm, again.Find("S1-100")!.NetLengthMm, 1e-3);
    }

    [Theory]
    [InlineData("")]
    [InlineData("{")]
    [InlineData("{\"schema\":\"plankfit-cut/9\",\"planks\":[]}")]
    [InlineData("{\"schema\":\"plankfit-cut/1\"}")]
    [InlineData("{\"schema\":\"plankfit-cut/1\",\"planks\":[{\"id\":\"S1-01\"}]}")]
    [InlineData("[1]")]
    [InlineData("null")]
    public void ASpoiledRecordIsRefusedInWords(string text)
    {
        (ImmutableArray<SawnPlank> planks, Finding? fault, _) = SawnPlanksFile.Read(
            text,
            "sawn-planks.json"
        );
        Assert.Empty(planks);
        Assert.StartsWith("sawn-planks.json", fault!.Where, StringComparison.Ordinal);
        Assert.True(fault.Message.Length > 20);
    }

    private static Job Job() => PlaneBottom.Job(20, 0, 9, 1, OffsetsAreTo.Outside);

    private static IEnumerable<SawnPlank> Sawn(BottomPlan plan, params string[] ids) =>
        ids.Select(id => RecordsOfSawn.Of(plan, id));

    private static Job With(Job job, ImmutableArray<SawnPlank> cut) =>
        job with
        {
            AsBuilt = AsBuiltSpec.None with { Sawn = cut },
        };

    private static string Text(BottomPlan plan)
    {
        using var stream = new MemoryStream();
        PlankingJson.Write(OnPlanks.Of(plan), stream);
        return System.Text.Encoding.UTF8.GetString(stream.ToArray());
    }
}
