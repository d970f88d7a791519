namespace PlankFit.Draughting.Layout;

/// <summary>The layers of a drawing: in a cutting pattern each is one operation in the shop.</summary>
public static class Layers
{
    /// <summary>The outline to saw.</summary>
    public const string Cut = "cut";

    /// <summary>Where the wood ends on the boat: not sawn at the bench.</summary>
    public const string Net = "net";

    /// <summary>Pencil lines: where each face ends, witness ticks, the arrow forward.</summary>
    public const string Marks = "marks";

    /// <summary>Where a plank is divided into pieces.</summary>
    public const string Joints = "joints";

    /// <summary>What lies behind a plank, with its names: pencil lines on the outer face.</summary>
    public const string Behind = "behind";

    public const string Text = "text";

    /// <summary>The sheet's own border and rules.</summary>
    public const string Frame = "frame";

    /// <summary>Edges, stations and seams of the hull in the views.</summary>
    public const string Hull = "hull";
}
