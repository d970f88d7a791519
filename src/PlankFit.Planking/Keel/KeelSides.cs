namespace PlankFit.Planking;

/// <summary>Which side of the keel the planks of a layer meet.</summary>
internal static class KeelSides
{
    public static KeelSideFace Of(Job job, HullSurface hull, PlankLayerSpec layer, Side side)
    {
        return job.Hull.KeelSide == KeelSide.Plumb
            ? KeelSideFace.Plumb(hull.Surface)
            : KeelSideFace.SquareAtKeelLine;
    }
}
