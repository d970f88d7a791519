namespace PlankFit.Planking;

/// <summary>Which side of the keel the planks of a layer meet.</summary>
internal static class KeelSides
{
    /// <summary>
    /// That of the keel layer that names the planks' layer; the first keel layer's, carried on, where none does; the table's keel line where the job names
    /// no keel layers.
    /// </summary>
    public static KeelSideFace Of(Job job, HullSurface hull, PlankLayerSpec layer, Side side)
    {
        var stack = KeelStack.Of(job, hull, side);
        if (stack.IsEmpty)
        {
            return OfTable(job, hull);
        }

        return (stack.FirstOrDefault(k => k.Planks.Name == layer.Name) ?? stack[0]).Side;
    }

    public static KeelSideFace OfTable(Job job, HullSurface hull) =>
        job.Hull.KeelSide == KeelSide.Plumb
            ? KeelSideFace.Plumb(hull.Surface)
            : KeelSideFace.SquareAtKeelLine;
}
