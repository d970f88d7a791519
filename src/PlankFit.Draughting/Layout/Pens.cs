namespace PlankFit.Draughting.Layout;

/// <summary>The lines of our sheets: black, and none thinner than a photocopier keeps (0.18 mm, common drawing-office practice).</summary>
public static class Pens
{
    /// <summary>What is sawn.</summary>
    public static readonly Pen Cut = new(0.5);

    /// <summary>Where the wood ends on the boat.</summary>
    public static readonly Pen Net = new(0.18, 0, [2.2, 1.2]);

    public static readonly Pen Outer = new(0.25);
    public static readonly Pen Inner = new(0.25, 0, [0.9, 0.9]);
    public static readonly Pen Seam = new(0.25);
    public static readonly Pen HullEdge = new(0.6);

    /// <summary>What is sawn, among thin lines of the hull round it: half as thick again as any other.</summary>
    public static readonly Pen Mould = new(0.9);
    public static readonly Pen Station = new(0.18, 0.25, [6, 1.2, 1, 1.2]);
    public static readonly Pen BehindCentre = new(0.18, 0, [7, 1.2, 1, 1.2]);
    public static readonly Pen BehindEdge = new(0.18, 0, [3.5, 1.4]);
    public static readonly Pen Tick = new(0.35);
    public static readonly Pen Measure = new(0.18);
    public static readonly Pen Rule = new(0.18, 0.2);
    public static readonly Pen Frame = new(0.5);
    public static readonly Pen None = new(0);
}
