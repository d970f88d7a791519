using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using PlankFit.Hashing;
using PlankFit.Pages.Guarding;
using PlankFit.Pages.Shelf;

namespace PlankFit.Pages.Serving;

/// <summary>The server put together: who may ask, how much, and what is answered.</summary>
internal static class PageServer
{
    /// <summary>A job file is a few kilobytes.</summary>
    public const int MostBodyBytes = 2 * 1024 * 1024;
    public const int MostConnections = 100;

    /// <param name="port">0 for any that is free.</param>
    /// <param name="network">The address of the shop's network that is served as well; null for this computer alone.</param>
    /// <param name="say">Told every code that lets a browser of that network in; null once the door is shut for good.</param>
    public static WebApplication Build(
        JobShelf shelf,
        int port,
        IPAddress? network = null,
        Action<string?>? say = null
    )
    {
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = MostBodyBytes;
            kestrel.Limits.MaxConcurrentConnections = MostConnections;
            kestrel.Listen(IPAddress.Loopback, port);
            if (network is not null)
            {
                kestrel.Listen(network, port);
            }
        });
        // Whoever closes the terminal does not wait for open pages.
        builder.Services.Configure<Microsoft.Extensions.Hosting.HostOptions>(o =>
            o.ShutdownTimeout = TimeSpan.FromSeconds(1)
        );
        // Made by the container, so that it is closed by it.
        builder.Services.AddSingleton(_ => new OpenJobs(shelf));
        WebApplication app = builder.Build();
        app.Use(next => context => Guard.Run(context, next, app.Lifetime.ApplicationStopping));
        if (network is not null)
        {
            var door = new Door(network, say ?? (_ => { }));
            app.Use(next => context => door.Run(context, next));
            app.Lifetime.ApplicationStarted.Register(door.Begin);
            CodeRoutes.Map(app, door);
        }

        OpenJobs jobs = app.Services.GetRequiredService<OpenJobs>();
        string epoch = Convert.ToHexStringLower(Unguessable.Bytes(6));
        RoomRoutes.Map(app, jobs);
        NewHullRoutes.Map(app, jobs);
        JobRoutes.Map(app, jobs, epoch);
        PlankRoutes.Map(app, jobs);
        TableRoutes.Map(app, jobs);
        PaperRoutes.Map(app, jobs);
        SheetRoutes.Map(app, jobs);
        TapingRoutes.Map(app, jobs);
        LayingRoutes.Map(app, jobs);
        OthersRoutes.Map(app, jobs);
        return app;
    }

    /// <summary>Where it serves, once it has started: http://127.0.0.1:41327/.</summary>
    /// <param name="network">Of the shop's network instead.</param>
    public static string Address(WebApplication app, bool network = false) =>
        app.Services.GetRequiredService<IServer>()
            .Features.Get<IServerAddressesFeature>()!
            .Addresses.ElementAt(network ? 1 : 0) + "/";
}
