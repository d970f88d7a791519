using PlankFit.Planking.Jobs;
using PlankFit.Planking.Planks;

namespace PlankFit.Tests.Support;

/// <summary>Planks with one part of their form otherwise than it is.</summary>
internal static class Changed
{
    public static Plank Shaped(this Plank plank, Func<PlankShape, PlankShape> change) =>
        plank with
        {
            Form = plank.Form with { Shape = change(plank.Form.Shape) },
        };

    public static Plank Sized(this Plank plank, Func<PlankSizes, PlankSizes> change) =>
        plank with
        {
            Form = plank.Form with { Sizes = change(plank.Form.Sizes) },
        };

    public static Plank Bent(this Plank plank, Bend bend) =>
        plank with
        {
            Form = plank.Form with { Bend = bend },
        };

    public static Plank Ended(this Plank plank, IEnumerable<PlankEnd> ends) =>
        plank with
        {
            Form = plank.Form with { Ends = [.. ends] },
        };

    public static Plank Fitted(this Plank plank, EndFit fit) =>
        plank with
        {
            Form = plank.Form with { Fit = fit },
        };

    public static Plank WithStraight(this Plank plank, Func<StraightEdges, StraightEdges> change) =>
        plank.Sized(s => s with { Straight = change(s.Straight) });

    public static SawnPlank Shaped(this SawnPlank plank, Func<PlankShape, PlankShape> change) =>
        plank with
        {
            Form = plank.Form with { Shape = change(plank.Form.Shape) },
        };

    public static SawnPlank Sized(this SawnPlank plank, Func<PlankSizes, PlankSizes> change) =>
        plank with
        {
            Form = plank.Form with { Sizes = change(plank.Form.Sizes) },
        };

    /// <summary>The first of its ends is changed.</summary>
    public static SawnPlank Ended(this SawnPlank plank, Func<PlankEnd, PlankEnd> change) =>
        plank with
        {
            Form = plank.Form with
            {
                Ends = plank.Form.Ends.SetItem(0, change(plank.Form.Ends[0])),
            },
        };

    public static SawnPlank WithoutEnds(this SawnPlank plank) =>
        plank with
        {
            Form = plank.Form with { Ends = [] },
        };
}
