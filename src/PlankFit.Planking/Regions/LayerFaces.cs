namespace PlankFit.Planking.Regions;

/// <summary>A layer's region on its mid-thickness surface and on its two faces.</summary>
internal sealed record LayerFaces(LayerRegion Middle, LayerRegion Outer, LayerRegion Inner);
