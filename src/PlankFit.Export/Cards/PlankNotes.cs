using PlankFit.Export.Words;
using PlankFit.Planking.Bending;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Cards;

/// <summary>What a card or a list says of a plank besides its ends.</summary>
internal static class PlankNotes
{
    public static IEnumerable<string> Of(PlankLayerPlan layer, Plank plank, LengthUnit unit)
    {
        if (plank.IsSawn)
        {
            yield return $"Sawn already, from revision {plank.SawnFrom}: its shape is as it was sawn.";
        }

        if (plank.IsFitted)
        {
            yield return "Fitted already: do not saw it again.";
        }

        yield return PlankWords.Edges(plank, unit);
        yield return PlankWords.Bend(plank, layer.Spec.ThicknessMm, unit);
        if (PlankWords.DropIn(plank, unit) is { Length: > 0 } fitted)
        {
            yield return fitted;
        }

        if (plank.KeelAngleDegrees is { } angle)
        {
            yield return $"Lies at {AngleText.ForPaper(angle)} to the {layer.Panel.WordOf(PanelEdge.Lower)}.";
        }

        if (plank.Marks.Length > 0)
        {
            yield return "Ticks meet those of the same number on the neighbour.";
        }
    }

    /// <summary>The same in a few words, for a row of the list: each starts with what it is about.</summary>
    public static IEnumerable<string> Short(Plank plank, double thicknessMm, LengthUnit unit)
    {
        if (plank.IsRefused)
        {
            yield return RefusedBend.ToDo + ".";
        }

        if (plank.IsSawn)
        {
            yield return "Sawn already.";
        }

        if (plank.IsFitted)
        {
            yield return "Fitted already: do not saw.";
        }

        string forward = PlankWords.Edge(plank.ForwardEdge, unit),
            after = PlankWords.Edge(plank.AfterEdge, unit);
        yield return forward == after
            ? $"Edges {forward}."
            : $"Forward edge {forward}, after edge {after}.";
        yield return plank.StraightEdges ? "Straight stock serves." : "Cut to the line.";
        yield return PlankWords.IsBent(plank.Bend, thicknessMm, out double radius)
            ? $"Bend {plank.Bend.Verdict}, radius {PlankWords.Radius(radius, unit)}."
            : $"Bend {plank.Bend.Verdict}.";
        if (plank.FitBothEnds)
        {
            yield return plank.DropsIn == false
                ? "Fits at both ends, does not drop in."
                : "Fits at both ends.";
        }
    }
}
