using System.Diagnostics.Tracing;
using System.Reflection;
using System.Reflection.Emit;

/// <summary>
/// Writes down what a run of a .NET program compiled just in time, as a profile (.mibc) from which crossgen2 compiles the same methods ahead: above all
/// the framework's generic code over the program's own value types, which it cannot foresee.
/// Loaded through DOTNET_STARTUP_HOOKS; the profile goes to the file that RUN_PROFILE names. Needs System.Diagnostics.Tracing.EventSource.IsSupported.
/// The file's form (a library whose global methods push the tokens of the methods, a group for the assemblies that a method is made of) is the one of
/// dotnet-pgo, docs/design/features/dotnet-pgo.md of dotnet/runtime.
/// </summary>
internal static class StartupHook
{
    /// <summary>Of the runtime's events: methods as they are compiled.</summary>
    private const EventKeywords JustInTime = (EventKeywords)0x10;

    /// <summary>Of a method's flags: made at run time, and gone with what made it.</summary>
    private const uint Dynamic = 1;

    private static readonly MethodInfo DeclaringType = typeof(RuntimeMethodHandle).GetMethods(BindingFlags.NonPublic | BindingFlags.Static)
        .First(m => m.Name == "GetDeclaringType" && m.GetParameters()[0].ParameterType.IsValueType);

    private static readonly ConstructorInfo Handle = DeclaringType.GetParameters()[0].ParameterType
        .GetConstructors(BindingFlags.NonPublic | BindingFlags.Instance).First(c => c.GetParameters().Length == 1);

    public static void Initialize()
    {
        var path = Environment.GetEnvironmentVariable("RUN_PROFILE") ?? throw new InvalidOperationException("RUN_PROFILE names no file");
        if (!AppContext.TryGetSwitch("System.Diagnostics.Tracing.EventSource.IsSupported", out var supported) || !supported)
            throw new InvalidOperationException("the program runs without event sources, so what it compiles cannot be seen");
        var compiled = new Compiled();
        AppDomain.CurrentDomain.ProcessExit += (_, _) =>
        {
            compiled.Dispose();
            Save(compiled.Handles().Select(Method).OfType<MethodBase>().Where(m => m.DeclaringType is not null), path);
        };
    }

    private static MethodBase? Method(nint handle)
    {
        var method = RuntimeMethodHandle.FromIntPtr(handle);
        var type = (Type?)DeclaringType.Invoke(null, [Handle.Invoke([method.Value])]);
        return type is null || type.Assembly.IsDynamic ? null : MethodBase.GetMethodFromHandle(method, type.TypeHandle);
    }

    private static void Save(IEnumerable<MethodBase> methods, string path)
    {
        var assembly = new PersistedAssemblyBuilder(new AssemblyName("RunProfile"), typeof(object).Assembly);
        var module = assembly.DefineDynamicModule("RunProfile");
        var index = Global(module, "AssemblyDictionary");
        var groups = methods.DistinctBy(Key).OrderBy(Key, StringComparer.Ordinal).GroupBy(Assemblies).OrderBy(g => g.Key, StringComparer.Ordinal);
        foreach (var (number, group) in groups.Index())
        {
            var body = Global(module, $"Group{number}");
            foreach (var method in group)
            {
                if (method is ConstructorInfo constructor)
                    body.Code.Emit(OpCodes.Ldtoken, module.GetMethodMetadataToken(constructor));
                else
                    body.Code.Emit(OpCodes.Ldtoken, (MethodInfo)method);
                body.Code.Emit(OpCodes.Pop);
            }
            body.Code.Emit(OpCodes.Ret);
            index.Code.Emit(OpCodes.Ldstr, group.Key);
            index.Code.Emit(OpCodes.Ldtoken, body.Method);
            index.Code.Emit(OpCodes.Pop);
        }
        index.Code.Emit(OpCodes.Ret);
        module.CreateGlobalFunctions();
        assembly.Save(path);
    }

    private static (MethodBuilder Method, ILGenerator Code) Global(ModuleBuilder module, string name)
    {
        var method = module.DefineGlobalMethod(name, MethodAttributes.Public | MethodAttributes.Static, typeof(void), []);
        return (method, method.GetILGenerator());
    }

    private static string Key(MethodBase method) => $"{method.DeclaringType!.AssemblyQualifiedName} {method}";

    /// <summary>The assembly that defines the method, then the others of which its type and type arguments are made, each ended by a semicolon.</summary>
    private static string Assemblies(MethodBase method)
    {
        var types = method.IsGenericMethod ? method.GetGenericArguments().Prepend(method.DeclaringType!) : [method.DeclaringType!];
        var own = Name(method.DeclaringType!);
        var others = types.SelectMany(Parts).Select(Name).Where(n => n != own).Distinct().Order(StringComparer.Ordinal);
        return string.Concat(others.Prepend(own).Select(n => n + ";"));
    }

    private static string Name(Type type) => type.Assembly.GetName().Name!;

    private static IEnumerable<Type> Parts(Type type) =>
        type.HasElementType ? Parts(type.GetElementType()!)
        : type.IsConstructedGenericType ? type.GetGenericArguments().SelectMany(Parts).Prepend(type)
        : [type];

    private sealed class Compiled : EventListener
    {
        private readonly HashSet<nint> _handles = [];

        public IReadOnlyList<nint> Handles()
        {
            lock (_handles)
                return [.. _handles];
        }

        protected override void OnEventSourceCreated(EventSource eventSource)
        {
            if (eventSource.Name == "Microsoft-Windows-DotNETRuntime")
                EnableEvents(eventSource, EventLevel.Verbose, JustInTime);
        }

        protected override void OnEventWritten(EventWrittenEventArgs eventData)
        {
            if (eventData.EventName?.StartsWith("MethodLoadVerbose", StringComparison.Ordinal) == true && ((uint)eventData.Payload![5]! & Dynamic) == 0)
                lock (_handles)
                    _handles.Add((nint)(ulong)eventData.Payload![0]!);
        }
    }
}
