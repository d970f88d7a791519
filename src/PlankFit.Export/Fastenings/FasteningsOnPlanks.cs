using System.Text.Json;
using PlankFit.Export.Shown;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Fastenings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Fastenings;

/// <summary>Fastenings on a plank's card, patterns and in planking.json.</summary>
internal sealed class FasteningsOnPlanks(FasteningPlan fastenings, LengthUnit unit) : IOnPlanks
{
    public FasteningSpec? Asked { get; init; }

    public IEnumerable<string> OnCard(Plank plank) =>
        fastenings.On(plank.Id) is { } made ? FasteningWords.OnCard(made, unit) : [];

    public IEnumerable<string> OnPattern(Plank plank) =>
        fastenings.On(plank.Id) is { Points.IsEmpty: false } made
            ? FasteningWords.OnPattern(made)
            : [];

    public IEnumerable<CircleShape> Holes(Plank plank, Vec2 shift) =>
        fastenings.On(plank.Id) is { } made
            ? FasteningMarks.Holes(
                made,
                fastenings.Layers.First(l => l.Layer == plank.Layer).Rule,
                shift
            )
            : [];

    public IEnumerable<Shape> Signs(Plank plank, Vec2 shift) =>
        fastenings.On(plank.Id) is { } made ? FasteningMarks.Signs(made, shift) : [];

    public IEnumerable<Vec2> Places(Plank plank) =>
        fastenings.On(plank.Id) is { } made ? made.Points.Select(f => f.At) : [];

    public IEnumerable<(Vec2 At, PointUse Use)> Points(Plank plank) =>
        fastenings.On(plank.Id) is { } made
            ? made.Points.Select(f =>
                (
                    f.At,
                    f.Use switch
                    {
                        FasteningUse.Backing => PointUse.Timber,
                        FasteningUse.PullDown => PointUse.SkinBelow,
                        _ => PointUse.Hole,
                    }
                )
            )
            : [];

    public double? DepthBehindMm(string name) => Asked?.DepthOf(name);

    public void Write(Utf8JsonWriter json, Plank plank)
    {
        if (fastenings.On(plank.Id) is { } made)
        {
            FasteningJson.Write(json, new(json), made);
        }
    }
}
