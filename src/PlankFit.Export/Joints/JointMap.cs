using PlankFit.Export.Sheets;
using PlankFit.Export.Views;
using PlankFit.Export.Words;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Joints;

/// <summary>
/// One layer in plan, both sides, seen from outside, with its joints: each a thick line with the letters of its pieces, and the least distance to a joint of
/// the next plank beside it. The joints of the layer below show through in dashes.
/// </summary>
public static class JointMap
{
    private const double HeadMm = 24;
    private const double NamesMm = 9;

    public static Drawing Of(BottomPlan plan, PlankLayerPlan layer)
    {
        var format = SheetFormat.Wall(plan.Job);
        Box inside = Frame.Inside(format).Within(8);
        string[] rules =
        [
            .. plan
                .Joints.Layers.Where(l => l.Layer == layer.Number)
                .SelectMany(l => l.Rules)
                .Distinct()
                .Select(r => JointWords.Sentence(r, plan.Job.Units)),
            .. JointWords.SwitchedOff(plan.Job.Joints),
        ];
        double rulesMm =
            (rules.Sum(r => Letters.Wrap(r, Letters.Bench, inside.Width).Count) + 1)
            * Letters.Bench
            * Letters.Leading;
        var view = LayerInPlan.Of(
            plan,
            layer,
            new(
                inside.Left + 2,
                inside.Bottom + NamesMm + rulesMm,
                inside.Right - 2,
                inside.Top - HeadMm
            )
        );
        return OverviewSheet.Of(
            plan.Job,
            ("Joints", $"both sides, {SheetWords.Of(layer)}, outer face up"),
            view.Ratio,
            Cautions.Joints,
            pad =>
            {
                Heading(pad, inside, view);
                Draw(pad, view);
                Rules(pad, inside with { Top = inside.Bottom + rulesMm }, rules);
            }
        );
    }

    private static void Heading(SheetCanvas pad, Box inside, LayerInPlan view)
    {
        (BottomPlan plan, PlankLayerPlan layer) = (view.Plan, view.Layer);
        int joints = new[] { Side.Starboard, Side.Port }.Sum(s =>
            plan.Joints.Of(layer.Number, s)?.Planks.Sum(p => p.Joints.Length) ?? 0
        );
        pad.Text(
            inside.Left,
            inside.Top - Letters.Name,
            $"{SheetWords.Of(layer)}: {PlanWords.Count(joints, "joint")}",
            Letters.Name,
            bold: true
        );
        pad.Paragraph(
            inside.Left,
            inside.Top - Letters.Name - 4,
            inside.Width,
            "Seen from outside, as the hull lies upside down: port above, starboard below, forward to the left. Thick: the joints of this layer, dashed: those of the layer below. "
                + "At each joint the number of its plank and, where a joint lies in a plank next to it, the least distance to that, along the planks."
                + view.Said,
            Letters.Bench
        );
    }

    private static void Rules(SheetCanvas pad, Box box, string[] rules)
    {
        double top = pad.Paragraph(
            box.Left,
            box.Top,
            box.Width,
            "The rules of stagger, and where they come from",
            Letters.Bench,
            true
        );
        foreach (string rule in rules)
        {
            top = pad.Paragraph(box.Left, top, box.Width, rule, Letters.Bench);
        }
    }

    private static void Draw(SheetCanvas pad, LayerInPlan view)
    {
        (BottomPlan plan, PlankLayerPlan layer) = (view.Plan, view.Layer);
        view.DrawBehind(pad);
        view.DrawPlanks(pad, Pens.Measure);
        view.DrawEdges(pad);
        PlankLayerPlan? below = plan.PlankLayers.LastOrDefault(l => l.Number < layer.Number);
        foreach (Side side in new[] { Side.Starboard, Side.Port })
        {
            if (below is not null)
            {
                foreach ((_, _, Vec2[] line) in Joints(view, below, side))
                {
                    pad.Open(line, Pens.Inner, Layers.Joints);
                }
            }

            foreach ((_, _, Vec2[] line) in Joints(view, layer, side))
            {
                pad.Open(line, new Pen(0.7), Layers.Joints);
            }
        }

        Vec2[][] Lines(PlankLayerPlan? of) =>
            of is null
                ? []
                :
                [
                    .. new[] { Side.Starboard, Side.Port }.SelectMany(s =>
                        Joints(view, of, s).Select(j => j.Line)
                    ),
                ];
        var labels = new JointLabels(Lines(layer), Lines(below));
        foreach (Side side in new[] { Side.Starboard, Side.Port })
        {
            foreach ((Plank plank, PlankJoint joint, Vec2[] line) in Joints(view, layer, side))
            {
                labels.Draw(pad, plank, joint, line, view);
            }
        }

        Stations(pad, view);
        // Where no place is clear of the joints of the layer below, their dashes stop short of the words.
        pad.BreakAroundLetters(Layers.Joints, Layers.Hull, Layers.Behind);
    }

    /// <summary>Every joint as it lies on the sheet: its middle line, carried to the hull.</summary>
    private static IEnumerable<(Plank Plank, PlankJoint Joint, Vec2[] Line)> Joints(
        LayerInPlan view,
        PlankLayerPlan layer,
        Side side
    )
    {
        if (view.Plan.Joints.Of(layer.Number, side) is not { } jointed)
        {
            yield break;
        }

        var planks = layer.On(side).ToDictionary(p => p.Id);
        foreach (JointedPlank pieced in jointed.Planks)
        {
            Plank plank = planks[pieced.PlankId];
            foreach (PlankJoint joint in pieced.Joints)
            {
                yield return (
                    plank,
                    joint,
                    [
                        .. Enumerable
                            .Range(0, 2)
                            .Select(k => 0.5 * (joint.OuterLine[k] + joint.InnerLine[k]))
                            .Select(p => view.On(plank, p)),
                    ]
                );
            }
        }
    }

    private static void Stations(SheetCanvas pad, LayerInPlan view)
    {
        (Placing at, Box hull) = (view.At, view.Hull);
        double foot = at[new(0, hull.Bottom)].Y,
            // A layer inside the table's surface begins and ends so much off its first and last stations.
            beyond = 1 + Stack.Of(view.Plan.Job.Planking).ThicknessMm;
        (string Name, double X)[] names =
        [
            .. view
                .Plan.Job.Offsets.Stations.Where(s =>
                    s.PositionMm >= hull.Left - beyond && s.PositionMm <= hull.Right + beyond
                )
                .Select(s => (s.Name, at[new(s.PositionMm, 0)].X)),
        ];
        StationNames.Row(pad, names, foot - NamesMm + 1);
        foreach ((_, double x) in names)
        {
            pad.Line(x, foot - 4, x, foot - 1, Pens.Measure);
        }
    }
}
