using PlankFit.Export.Fastenings;
using PlankFit.Export.Joints;
using PlankFit.Export.Panels;
using PlankFit.Export.Timber;
using PlankFit.Export.Views;
using PlankFit.Geometry.Development;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Panels;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;
using Layers = PlankFit.Draughting.Layout.Layers;

namespace PlankFit.Tests.Export.Sheets;

/// <summary>Timber and the seams of the layer below stand in grey behind every view of a layer, where they are on the hull.</summary>
public sealed class BehindInGreyTests
{
    private static BottomPlan Plan => DemoPlans.Of("survey-launch");

    public static TheoryData<string> Views => ["plan", "joints", "fastenings", "strain"];

    /// <summary>
    /// Timber covers on the sheet what its own strips cover on the hull, and no more: the grey is as large, to the scale of the sheet, as all strips seen from below. As
    /// many grey lines as there are seams in the layer below, ending where these end.
    /// </summary>
    [Theory]
    [MemberData(nameof(Views))]
    public void GreyIsWhatLiesBehind(string view)
    {
        foreach (PlankLayerPlan layer in Plan.PlankLayers)
        {
            Drawing sheet = view switch
            {
                "plan" => BottomPlanView.Of(Plan, layer),
                "joints" => JointMap.Of(Plan, layer),
                "strain" => Strain(layer),
                _ => FasteningPlanView.Of(Plan, Plan.Fastenings!, layer),
            };
            double scale = Scale(sheet, layer);
            // To starboard a plank's grey is its strain.
            bool portAlone = view == "strain";
            Plank[] planks = [.. portAlone ? [] : layer.Starboard, .. layer.Port];
            double there = planks.Sum(p =>
                Plan.Framing.On(p.Id)
                    .Where(c => c.Of.Kind != FramingKind.Open)
                    .Sum(c =>
                        Area([
                            .. c.Cover.Select(q => p.Map.Point(q)).Select(q => new Vec2(q.X, -q.Y)),
                        ])
                    )
            );
            double drawn = sheet
                .Shapes.OfType<Polyline>()
                .Where(l => l.Layer == Layers.Behind && l.Fill == 0.88)
                .Sum(l => Area([.. l.Points]));
            Assert.True(there > 1e5);
            Assert.Equal(there * scale * scale, drawn, 0.01 * there * scale * scale);
            int seams = Plan
                .PlankLayers.Where(l => l.Number == layer.Number - 1)
                .Sum(l =>
                    l.Starboard.Concat(l.Port)
                        .Where(p => !portAlone || p.Side == Side.Port)
                        .Count(p => p.AfterEdge.Exists && p.AfterEdge.Seam.Length > 1)
                );
            // Words may break a line into two.
            int lines = sheet
                .Shapes.OfType<Polyline>()
                .Count(l => l.Layer == Layers.Behind && l.Pen == LayerInPlan.SeamBelow);
            Assert.InRange(lines, seams == 0 ? 0 : 0.9 * seams, 3 * seams);
        }
    }

    private static Drawing Strain(PlankLayerPlan layer) =>
        TimberSheets
            .Of(Plan, Plan.Timber!)
            .Where(d =>
                d.Shapes.OfType<Lettering>()
                    .Any(l =>
                        l.Text.EndsWith(
                            "of what a cold bend is trusted with",
                            StringComparison.Ordinal
                        )
                    )
            )
            .ElementAt(layer.Number - 1);

    /// <summary>The panel laid flat keeps areas but for its strain: its grey is the strips' own, to starboard.</summary>
    [Fact]
    public void ThePanelLaidFlatHasTheStripsOfItsInnermostLayer()
    {
        PanelPlan panel = BottomPanel.Develop(Plan.Planked, PanelOptions.Usual);
        var behind = PanelBehind.Of(Plan, panel);
        double flat = behind.Covers.Sum(c => Area([.. c])),
            there = Plan
                .PlankLayers.First()
                .Starboard.Sum(p =>
                    Plan.Framing.On(p.Id)
                        .Where(c => c.Of.Kind != FramingKind.Open)
                        .Sum(c => Area([.. c.Cover]))
                );
        Assert.True(there > 1e5);
        Assert.Equal(there, flat, 0.015 * there);
        Drawing[] pages = [.. PanelSheets.Pages(Plan, panel)];
        Assert.Contains(
            pages.SelectMany(p => p.Shapes.OfType<Polyline>()),
            l => l.Layer == Layers.Behind && l.Pen.IsDashed
        );
        Assert.All(pages, p => Assert.Empty(SheetCheck.Faults(p)));
    }

    /// <summary>Port is read off starboard in the mirror: what is on one side alone is not drawn, whichever, and the sheet says so.</summary>
    [Theory]
    [InlineData(Side.Starboard)]
    [InlineData(Side.Port)]
    public void TheMirrorShowsNothingThatIsOnOneSideAlone(Side only)
    {
        Job job = Plan.Job;
        FramingSpec[] solid = [.. job.Framing.Where(f => f.Kind != FramingKind.Open)];
        FramingSpec one = solid[0],
            other = solid[^1];
        BottomPlan With(params FramingSpec[] framing) =>
            BottomPlanner
                .Again(
                    Plan,
                    job with
                    {
                        Framing = [.. framing],
                        Joints = null,
                        Fastenings = null,
                        SettingUp = null,
                    }
                )
                .Plan!;
        BottomPlan both = With(other),
            oneSided = With(one with { Only = only }, other);
        PanelPlan panel = BottomPanel.Develop(Plan.Planked, PanelOptions.Usual);
        PanelBehind alone = PanelBehind.Of(both, panel),
            behind = PanelBehind.Of(oneSided, panel);
        Assert.False(alone.LeavesOut);
        Assert.NotEmpty(alone.Edges);
        // What both sides have stays as it is, and is all that is drawn.
        Assert.Equal(alone.Edges.SelectMany(e => e), behind.Edges.SelectMany(e => e));
        Assert.Equal(alone.Covers.SelectMany(c => c), behind.Covers.SelectMany(c => c));
        Assert.True(behind.LeavesOut);
        // On both sides it would be drawn too.
        Assert.True(PanelBehind.Of(With(one, other), panel).Edges.Length > alone.Edges.Length);
        string[] words =
        [
            .. PanelSheets
                .Pages(oneSided, panel)
                .SelectMany(p => p.Shapes.OfType<Lettering>())
                .Select(l => l.Text),
        ];
        Assert.Contains(
            words,
            w => w.Contains("on one side alone is not drawn", StringComparison.Ordinal)
        );
        Assert.All(PanelSheets.Pages(oneSided, panel), p => Assert.Empty(SheetCheck.Faults(p)));
    }

    /// <summary>Paper to hull, from the length of the layer.</summary>
    private static double Scale(Drawing sheet, PlankLayerPlan layer)
    {
        double[] x =
        [
            .. sheet
                .Shapes.OfType<Polyline>()
                .Where(l => l.Layer == Layers.Hull && !l.Pen.IsDashed)
                .SelectMany(l => l.Points)
                .Select(p => p.X),
        ];
        return (x.Max() - x.Min()) / (layer.Outline.Max(p => p.X) - layer.Outline.Min(p => p.X));
    }

    private static double Area(Vec2[] polygon) =>
        Math.Abs(polygon.Select((p, i) => p.Cross(polygon[(i + 1) % polygon.Length])).Sum() / 2);
}
