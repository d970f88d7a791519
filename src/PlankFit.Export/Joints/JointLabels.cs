using PlankFit.Export.Views;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Joints;

/// <summary>The words beside the joints of a map: lettered along the plank, inside it, clear of every joint and of each other.</summary>
/// <param name="joints">All joints of the layer.</param>
/// <param name="below">Those of the layer below, which words keep clear of where they can.</param>
internal sealed class JointLabels(IReadOnlyList<Vec2[]> joints, IReadOnlyList<Vec2[]> below)
{
    private const double FarthestMm = 40;
    private readonly List<Vec2[]> taken = [];

    /// <summary>The plank's number and its least distance to a joint of the next plank; where there is no room for both, the number alone.</summary>
    public void Draw(SheetCanvas pad, Plank plank, PlankJoint joint, Vec2[] line, LayerInPlan view)
    {
        Vec2 middle = 0.5 * (line[0] + line[1]);
        Vec2 way = (
            view.On(plank, new(joint.AtMm + 10, 0)) - view.On(plank, new(joint.AtMm, 0))
        ).Unit();
        Vec2[] outline = view.Outline(plank);
        double turn = Math.Atan2(way.Y, way.X) * 180 / Math.PI;
        turn -= Math.Abs(turn) > 90 ? 180 * Math.Sign(turn) : 0;
        foreach (Vec2[][] clearOf in new[] { [.. joints, .. below], joints.ToArray() })
        {
            foreach (string text in Texts(plank, joint, view.Plan.Job.Units))
            {
                foreach (double height in new[] { Letters.Bench, Letters.Small })
                {
                    if (Place(text, height, middle, way, outline, clearOf) is { } place)
                    {
                        pad.Text(place, text, height, Anchor.MiddleCentre, turn: turn);
                        return;
                    }
                }
            }
        }
    }

    private static IEnumerable<string> Texts(Plank plank, PlankJoint joint, LengthUnit unit)
    {
        string number = NumberText.Trimmed(plank.Number, 0);
        if (
            joint.Distances.FirstOrDefault(d => d.Rule.What == JointRuleKind.NextPlank) is
            { DistanceMm: { } mm }
        )
        {
            yield return $"{number}: {LengthText.PaperNumber(mm, unit)}";
        }

        yield return number;
    }

    private Vec2? Place(
        string text,
        double height,
        Vec2 middle,
        Vec2 way,
        Vec2[] outline,
        Vec2[][] clearOf
    )
    {
        double half = (Letters.Width(text, height) / 2) + 1,
            across = (height / 2) + 0.6;
        Vec2 left = way.Left();
        for (double far = half; far < half + FarthestMm; far += 0.5)
        {
            foreach (double sign in new[] { 1.0, -1.0 })
            {
                Vec2 place = middle + (sign * far * way);
                Vec2[] box =
                [
                    place - (half * way) - (across * left),
                    place + (half * way) - (across * left),
                    place + (half * way) + (across * left),
                    place - (half * way) + (across * left),
                ];
                if (
                    box.All(c => FlatPolygon.Holds(outline, c))
                    && !clearOf.Any(j => Meets(box, j))
                    && !taken.Any(t => Meets(box, t))
                )
                {
                    taken.Add(box);
                    return place;
                }
            }
        }

        return null;
    }

    /// <summary>Whether a box meets a line, or another box given by its corners.</summary>
    private static bool Meets(Vec2[] box, Vec2[] other) =>
        Sides(box).Any(a => Sides(other).Any(b => Segments.Meet(a.From, a.To, b.From, b.To)))
        || FlatPolygon.Holds(box, 0.5 * (other[0] + other[^1]))
        || (other.Length > 2 && FlatPolygon.Holds(other, 0.5 * (box[0] + box[2])));

    private static IEnumerable<(Vec2 From, Vec2 To)> Sides(Vec2[] points) =>
        points.Select((p, i) => (p, points[(i + 1) % points.Length]));
}
