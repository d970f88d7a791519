using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;

namespace PlankFit.Tests.Planking;

/// <summary>What must hold for the order of an outline's points and for its corners, as the contract of files puts it.</summary>
internal static class OutlineLaws
{
    public static void Check(PlankLayerPlan layer, Plank plank, List<string> broken)
    {
        Start(plank, broken);
        NoRepeats(plank, broken);
        Clockwise(layer, plank, broken);
        Rounded(plank, broken);
        if (
            !plank
                .FlatNet.Concat(plank.FlatCut)
                .All(p => double.IsFinite(p.X) && double.IsFinite(p.Y))
        )
        {
            broken.Add($"{plank.Id}: a flat point is not a number");
        }
    }

    /// <summary>Decimals of a millimetre in planking.json and in DXF.</summary>
    private const int Decimals = 4;

    /// <summary>From the lowest to the highest point as it is written, mm.</summary>
    public static double WrittenAcrossMm(IReadOnlyList<Vec2> outline)
    {
        double[] across = [.. outline.Select(p => Math.Round(p.Y, Decimals))];
        return Math.Round(across.Max() - across.Min(), Decimals);
    }

    /// <summary>As they are written, to a ten-thousandth of a millimetre and in DXF also to a millionth of an inch, outlines do not cross themselves.</summary>
    private static void Rounded(Plank plank, List<string> broken)
    {
        foreach ((double unit, int decimals) in new[] { (1, Decimals), (25.4, 6) })
        {
            Vec2 Written(Vec2 p) =>
                new(Math.Round(p.X / unit, decimals), Math.Round(p.Y / unit, decimals));
            if (
                !PlanarShapes.IsSimple([.. plank.FlatNet.Select(Written)])
                || !PlanarShapes.IsSimple([.. plank.FlatCut.Select(Written)])
            )
            {
                broken.Add($"{plank.Id}: an outline crosses itself as it is written");
            }
        }
    }

    /// <summary>The first point is the inboard vertex with the least n: an end of the innermost edge met.</summary>
    private static void Start(Plank plank, List<string> broken)
    {
        if (plank.Ends.IsEmpty)
        {
            broken.Add($"{plank.Id}: no ends");
            return;
        }

        if (!plank.ForwardEdge.Exists || !plank.AfterEdge.Exists)
        {
            return;
        }

        Vec2 a = plank.ForwardEdge.Flat[0],
            b = plank.AfterEdge.Flat[0],
            should = a.Y < b.Y ? a : b;
        if (!(plank.FlatNet[0].ChordTo(should) < 1e-6))
        {
            broken.Add($"{plank.Id}: its outline starts at {plank.FlatNet[0]}, not at {should}");
        }
    }

    private static void NoRepeats(Plank plank, List<string> broken)
    {
        for (int i = 0; i < plank.FlatNet.Length; i++)
        {
            int j = (i + 1) % plank.FlatNet.Length;
            if (plank.FlatNet[i].ChordTo(plank.FlatNet[j]) < 1e-6)
            {
                broken.Add($"{plank.Id}: points {i} and {j} of its net outline are one");
            }
        }

        for (int i = 0; i < plank.FlatCut.Length; i++)
        {
            if (plank.FlatCut[i].ChordTo(plank.FlatCut[(i + 1) % plank.FlatCut.Length]) < 1e-6)
            {
                broken.Add($"{plank.Id}: point {i} of its sawn outline stands twice");
            }
        }
    }

    /// <summary>Counter-clockwise seen from outside: the outline's area vector looks out of the hull to starboard, and in the mirror to port.</summary>
    private static void Clockwise(PlankLayerPlan layer, Plank plank, List<string> broken)
    {
        var area = new Vec3(0, 0, 0);
        Vec3 o = plank.Outline[0];
        for (int i = 1; i + 1 < plank.Outline.Length; i++)
        {
            area += (plank.Outline[i] - o).Cross(plank.Outline[i + 1] - o);
        }

        // The bottom looks down on both sides, a topside outboard.
        double outward =
            layer.Panel.HasKeel ? -area.Z
            : plank.Side == Side.Port ? -area.Y
            : area.Y;
        if (!(outward > 0) && area.Norm > 1)
        {
            broken.Add(
                $"{plank.Id} of {layer.Spec.Name}: its outline runs clockwise seen from outside"
            );
        }
    }
}
