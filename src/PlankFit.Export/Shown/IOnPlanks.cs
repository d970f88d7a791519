using System.Text.Json;
using PlankFit.Draughting.Bodies;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Planks;

namespace PlankFit.Export.Shown;

/// <summary>
/// What a feature adds to what is drawn and written of every plank, so that patterns, cards and planking.json need not know the feature. Nothing, unless it says
/// otherwise; shapes and places are in the plank's own flat coordinates, mm.
/// </summary>
internal interface IOnPlanks
{
    /// <summary>Sentences for the plank's card.</summary>
    IEnumerable<string> OnCard(Plank plank) => [];

    /// <summary>The same in a few words, for its row of the list.</summary>
    IEnumerable<string> InList(Plank plank) => [];

    /// <summary>Sentences of the whole plan, for the terminal and the summary.</summary>
    IEnumerable<string> InSummary() => [];

    /// <summary>Sentences beside its pattern.</summary>
    IEnumerable<string> OnPattern(Plank plank) => [];

    /// <summary>For a machine: holes in their own size.</summary>
    IEnumerable<CircleShape> Holes(Plank plank, Vec2 shift) => [];

    /// <summary>For a pencil: signs in full size.</summary>
    IEnumerable<Shape> Signs(Plank plank, Vec2 shift) => [];

    /// <summary>Places on which no words may stand.</summary>
    IEnumerable<Vec2> Places(Plank plank) => [];

    /// <summary>What is put through the plank, each where it is and what it is there for.</summary>
    IEnumerable<(Vec2 At, PointUse Use)> Points(Plank plank) => [];

    /// <summary>What it shows beside the planks in the whole shape.</summary>
    IEnumerable<Body> Bodies() => [];

    /// <summary>How deep what lies behind under that name is, mm; null where this feature does not know.</summary>
    double? DepthBehindMm(string name) => null;

    /// <summary>How far each plank's length may be out either way, 19 times in 20, mm; null of one of which that is not known, and empty where this feature does not know.</summary>
    IEnumerable<double?> SureMm(IEnumerable<Plank> planks) => [];

    /// <summary>Its own property of the plank in planking.json.</summary>
    void Write(Utf8JsonWriter json, Plank plank) { }

    /// <summary>The same of what bears on how the plank bends, beside its bend.</summary>
    void WriteBend(Utf8JsonWriter json, Plank plank) { }

    /// <summary>Its own property of the layer.</summary>
    void WriteLayer(Utf8JsonWriter json, PlankLayerPlan layer) { }
}

/// <summary>What a point of a plank is there for.</summary>
public enum PointUse
{
    /// <summary>To hold it to the timber behind.</summary>
    Timber,

    /// <summary>To pull it down to the skin below.</summary>
    SkinBelow,

    /// <summary>To let air and glue out.</summary>
    Hole,
}
