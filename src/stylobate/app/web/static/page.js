var ya,re,hh,pi,mc,dh,fh,Da,Yr,Os,ph,Pl,Ao,Ro,ca={},ua=[],Nd=/acit|ex(?:s|g|n|p|$)|rph|grid|ows|mnc|ntw|ine[ch]|zoo|^ord|itera/i,Ea=Array.isArray;function Jn(n,t){for(var e in t)n[e]=t[e];return n}function Ll(n){n&&n.parentNode&&n.parentNode.removeChild(n)}function Id(n,t,e){var i,s,r,a={};for(r in t)r=="key"?i=t[r]:r=="ref"?s=t[r]:a[r]=t[r];if(arguments.length>2&&(a.children=arguments.length>3?ya.call(arguments,2):e),typeof n=="function"&&n.defaultProps!=null)for(r in n.defaultProps)a[r]===void 0&&(a[r]=n.defaultProps[r]);return Kr(n,a,i,s,null)}function Kr(n,t,e,i,s){var r={type:n,props:t,key:e,ref:i,__k:null,__:null,__b:0,__e:null,__c:null,constructor:void 0,__v:s??++hh,__i:-1,__u:0};return s==null&&re.vnode!=null&&re.vnode(r),r}function Me(n){return n.children}function Zr(n,t){this.props=n,this.context=t}function Fi(n,t){if(t==null)return n.__?Fi(n.__,n.__i+1):null;for(var e;t<n.__k.length;t++)if((e=n.__k[t])!=null&&e.__e!=null)return e.__e;return typeof n.type=="function"?Fi(n):null}function Ud(n){if(n.__P&&n.__d){var t=n.__v,e=t.__e,i=[],s=[],r=Jn({},t);r.__v=t.__v+1,re.vnode&&re.vnode(r),Dl(n.__P,r,t,n.__n,n.__P.namespaceURI,32&t.__u?[e]:null,i,e??Fi(t),!!(32&t.__u),s),r.__v=t.__v,r.__.__k[r.__i]=r,vh(i,r,s),t.__e=t.__=null,r.__e!=e&&mh(r)}}function mh(n){if((n=n.__)!=null&&n.__c!=null)return n.__e=n.__c.base=null,n.__k.some(function(t){if(t!=null&&t.__e!=null)return n.__e=n.__c.base=t.__e}),mh(n)}function _c(n){(!n.__d&&(n.__d=!0)&&pi.push(n)&&!ha.__r++||mc!=re.debounceRendering)&&((mc=re.debounceRendering)||dh)(ha)}function ha(){try{for(var n,t=1;pi.length;)pi.length>t&&pi.sort(fh),n=pi.shift(),t=pi.length,Ud(n)}finally{pi.length=ha.__r=0}}function _h(n,t,e,i,s,r,a,o,l,c,h){var d,u,f,g,S,m,p=i&&i.__k||ua,x=t.length;for(l=Fd(e,t,p,l,x),d=0;d<x;d++)(f=e.__k[d])!=null&&(u=f.__i!=-1&&p[f.__i]||ca,f.__i=d,m=Dl(n,f,u,s,r,a,o,l,c,h),g=f.__e,f.ref&&u.ref!=f.ref&&(u.ref&&Nl(u.ref,null,f),h.push(f.ref,f.__c||g,f)),S==null&&g!=null&&(S=g),4&f.__u?(l=gh(f,l,n),u.__e&&(u.__e=null)):typeof f.type=="function"&&m!==void 0?l=m:g&&(l=g.nextSibling),f.__u&=-7);return e.__e=S,l}function Fd(n,t,e,i,s){var r,a,o,l,c,h=e.length,d=h,u=0;for(n.__k=new Array(s),r=0;r<s;r++)(a=t[r])!=null&&typeof a!="boolean"&&typeof a!="function"?(typeof a=="string"||typeof a=="number"||typeof a=="bigint"||a.constructor==String?a=n.__k[r]=Kr(null,a,null,null,null):Ea(a)?a=n.__k[r]=Kr(Me,{children:a},null,null,null):a.constructor===void 0&&a.__b>0?a=n.__k[r]=Kr(a.type,a.props,a.key,a.ref?a.ref:null,a.__v):n.__k[r]=a,l=r+u,a.__=n,a.__b=n.__b+1,o=null,(c=a.__i=Od(a,e,l,d))!=-1&&(d--,(o=e[c])&&(o.__u|=2)),o==null||o.__v==null?(c==-1&&(s>h?u--:s<h&&u++),typeof a.type!="function"&&(a.__u|=4)):c!=l&&(c==l-1?u--:c==l+1?u++:(c>l?u--:u++,a.__u|=4))):n.__k[r]=null;if(d)for(r=0;r<h;r++)(o=e[r])!=null&&(2&o.__u)==0&&(o.__e==i&&(i=Fi(o)),Mh(o,o));return i}function gh(n,t,e){var i,s;if(typeof n.type=="function"){for(i=n.__k,s=0;i&&s<i.length;s++)i[s]&&(i[s].__=n,t=gh(i[s],t,e));return t}n.__e!=t&&(t&&n.type&&!t.parentNode&&(t=Fi(n)),t=e.insertBefore(n.__e,t||null));do t=t&&t.nextSibling;while(t!=null&&t.nodeType==8);return t}function Od(n,t,e,i){var s,r,a,o=n.key,l=n.type,c=t[e],h=c!=null&&(2&c.__u)==0;if(c===null&&o==null||h&&o==c.key&&l==c.type)return e;if(i>(h?1:0)){for(s=e-1,r=e+1;s>=0||r<t.length;)if((c=t[a=s>=0?s--:r++])!=null&&(2&c.__u)==0&&o==c.key&&l==c.type)return a}return-1}function gc(n,t,e){t[0]=="-"?n.setProperty(t,e??""):n[t]=e==null?"":typeof e!="number"||Nd.test(t)?e:e+"px"}function nr(n,t,e,i,s){var r,a;t:if(t=="style")if(typeof e=="string")n.style.cssText=e;else{if(typeof i=="string"&&(n.style.cssText=i=""),i)for(t in i)e&&t in e||gc(n.style,t,"");if(e)for(t in e)i&&e[t]==i[t]||gc(n.style,t,e[t])}else if(t[0]=="o"&&t[1]=="n")r=t!=(t=t.replace(ph,"$1")),a=t.toLowerCase(),t=a in n||t=="onFocusOut"||t=="onFocusIn"?a.slice(2):t.slice(2),n.l||(n.l={}),n.l[t+r]=e,e?i?e[Os]=i[Os]:(e[Os]=Pl,n.addEventListener(t,r?Ro:Ao,r)):n.removeEventListener(t,r?Ro:Ao,r);else{if(s=="http://www.w3.org/2000/svg")t=t.replace(/xlink(H|:h)/,"h").replace(/sName$/,"s");else if(t!="width"&&t!="height"&&t!="href"&&t!="list"&&t!="form"&&t!="tabIndex"&&t!="download"&&t!="rowSpan"&&t!="colSpan"&&t!="role"&&t!="popover"&&t in n)try{n[t]=e??"";break t}catch{}typeof e=="function"||(e==null||e===!1&&t[4]!="-"?n.removeAttribute(t):n.setAttribute(t,t=="popover"&&e==1?"":e))}}function xc(n){return function(t){if(this.l){var e=this.l[t.type+n];if(t[Yr]==null)t[Yr]=Pl++;else if(t[Yr]<e[Os])return;return e(re.event?re.event(t):t)}}}function Dl(n,t,e,i,s,r,a,o,l,c){var h,d,u,f,g,S,m,p,x,y,v,M,A,_,E,D,w=t.type;if(t.constructor!==void 0)return null;128&e.__u&&(l=!!(32&e.__u),r=[o=t.__e=e.__e]),(h=re.__b)&&h(t);t:if(typeof w=="function"){d=a.length;try{if(x=t.props,y=w.prototype&&w.prototype.render,v=(h=w.contextType)&&i[h.__c],M=h?v?v.props.value:h.__:i,e.__c?p=(u=t.__c=e.__c).__=u.__E:(y?t.__c=u=new w(x,M):(t.__c=u=new Zr(x,M),u.constructor=w,u.render=zd),v&&v.sub(u),u.state||(u.state={}),u.__n=i,f=u.__d=!0,u.__h=[],u._sb=[]),y&&u.__s==null&&(u.__s=u.state),y&&w.getDerivedStateFromProps!=null&&(u.__s==u.state&&(u.__s=Jn({},u.__s)),Jn(u.__s,w.getDerivedStateFromProps(x,u.__s))),g=u.props,S=u.state,u.__v=t,f)y&&w.getDerivedStateFromProps==null&&u.componentWillMount!=null&&u.componentWillMount(),y&&u.componentDidMount!=null&&u.__h.push(u.componentDidMount);else{if(y&&w.getDerivedStateFromProps==null&&x!==g&&u.componentWillReceiveProps!=null&&u.componentWillReceiveProps(x,M),t.__v==e.__v||!u.__e&&u.shouldComponentUpdate!=null&&u.shouldComponentUpdate(x,u.__s,M)===!1){t.__v!=e.__v&&(u.props=x,u.state=u.__s,u.__d=!1),t.__e=e.__e,t.__k=e.__k,t.__k.some(function(P){P&&(P.__=t)}),ua.push.apply(u.__h,u._sb),u._sb=[],u.__h.length&&a.push(u),o=Fi(e);break t}u.componentWillUpdate!=null&&u.componentWillUpdate(x,u.__s,M),y&&u.componentDidUpdate!=null&&u.__h.push(function(){u.componentDidUpdate(g,S,m)})}if(u.context=M,u.props=x,u.__P=n,u.__e=!1,A=re.__r,_=0,y)u.state=u.__s,u.__d=!1,A&&A(t),h=u.render(u.props,u.state,u.context),ua.push.apply(u.__h,u._sb),u._sb=[];else do u.__d=!1,A&&A(t),h=u.render(u.props,u.state,u.context),u.state=u.__s;while(u.__d&&++_<25);u.state=u.__s,u.getChildContext!=null&&(i=Jn(Jn({},i),u.getChildContext())),y&&!f&&u.getSnapshotBeforeUpdate!=null&&(m=u.getSnapshotBeforeUpdate(g,S)),E=h!=null&&h.type===Me&&h.key==null?Sh(h.props.children):h,o=_h(n,Ea(E)?E:[E],t,e,i,s,r,a,o,l,c),u.base=t.__e,t.__u&=-161,u.__h.length&&a.push(u),p&&(u.__E=u.__=null)}catch(P){if(a.length=d,t.__v=null,l||r!=null){if(P.then){for(t.__u|=l?160:128;o&&o.nodeType==8&&o.nextSibling;)o=o.nextSibling;r!=null&&(r[r.indexOf(o)]=null),t.__e=o}else if(r!=null)for(D=r.length;D--;)Ll(r[D])}else t.__e=e.__e;t.__k==null&&(t.__k=e.__k||[]),P.then||xh(t),re.__e(P,t,e)}}else r==null&&t.__v==e.__v?(t.__k=e.__k,t.__e=e.__e):o=t.__e=Bd(e.__e,t,e,i,s,r,a,l,c);return(h=re.diffed)&&h(t),128&t.__u?void 0:o}function xh(n){n&&(n.__c&&(n.__c.__e=!0),n.__k&&n.__k.some(xh))}function vh(n,t,e){for(var i=0;i<e.length;i++)Nl(e[i],e[++i],e[++i]);re.__c&&re.__c(t,n),n.some(function(s){try{n=s.__h,s.__h=[],n.some(function(r){r.call(s)})}catch(r){re.__e(r,s.__v)}})}function Sh(n){return typeof n!="object"||n==null||n.__b>0?n:Ea(n)?n.map(Sh):n.constructor!==void 0?null:Jn({},n)}function Bd(n,t,e,i,s,r,a,o,l){var c,h,d,u,f,g,S,m=e.props||ca,p=t.props,x=t.type;if(x=="svg"?s="http://www.w3.org/2000/svg":x=="math"?s="http://www.w3.org/1998/Math/MathML":s||(s="http://www.w3.org/1999/xhtml"),r!=null){for(c=0;c<r.length;c++)if((f=r[c])&&"setAttribute"in f==!!x&&(x?f.localName==x:f.nodeType==3)){n=f,r[c]=null;break}}if(n==null){if(x==null)return document.createTextNode(p);n=document.createElementNS(s,x,p.is&&p),o&&(re.__m&&re.__m(t,r),o=!1),r=null}if(x==null)m===p||o&&n.data==p||(n.data=p);else{if(r=x=="textarea"&&p.defaultValue!=null?null:r&&ya.call(n.childNodes),!o&&r!=null)for(m={},c=0;c<n.attributes.length;c++)m[(f=n.attributes[c]).name]=f.value;for(c in m)f=m[c],c=="dangerouslySetInnerHTML"?d=f:c=="children"||c in p||c=="value"&&"defaultValue"in p||c=="checked"&&"defaultChecked"in p||nr(n,c,null,f,s);for(c in p)f=p[c],c=="children"?u=f:c=="dangerouslySetInnerHTML"?h=f:c=="value"?g=f:c=="checked"?S=f:o&&typeof f!="function"||m[c]===f||nr(n,c,f,m[c],s);if(h)o||d&&(h.__html==d.__html||h.__html==n.innerHTML)||(n.innerHTML=h.__html),t.__k=[];else if(d&&(n.innerHTML=""),_h(t.type=="template"?n.content:n,Ea(u)?u:[u],t,e,i,x=="foreignObject"?"http://www.w3.org/1999/xhtml":s,r,a,r?r[0]:e.__k&&Fi(e,0),o,l),r!=null)for(c=r.length;c--;)Ll(r[c]);o&&x!="textarea"||(c="value",x=="progress"&&g==null?n.removeAttribute("value"):g!=null&&(g!==n[c]||x=="progress"&&!g||x=="option"&&g!=m[c])&&nr(n,c,g,m[c],s),c="checked",S!=null&&S!=n[c]&&nr(n,c,S,m[c],s))}return n}function Nl(n,t,e){try{if(typeof n=="function"){var i=typeof n.__u=="function";i&&n.__u(),i&&t==null||(n.__u=n(t))}else n.current=t}catch(s){re.__e(s,e)}}function Mh(n,t,e){var i,s;if(re.unmount&&re.unmount(n),(i=n.ref)&&(i.current&&i.current!=n.__e||Nl(i,null,t)),(i=n.__c)!=null){if(i.componentWillUnmount)try{i.componentWillUnmount()}catch(r){re.__e(r,t)}i.base=i.__P=i.__n=null}if(i=n.__k)for(s=0;s<i.length;s++)i[s]&&Mh(i[s],t,e||typeof n.type!="function");e||Ll(n.__e),n.__c=n.__=n.__e=void 0}function zd(n,t,e){return this.constructor(n,e)}function kd(n,t,e){var i,s,r,a;t==document&&(t=document.documentElement),re.__&&re.__(n,t),s=(i=!1)?null:t.__k,r=[],a=[],Dl(t,n=t.__k=Id(Me,null,[n]),s||ca,ca,t.namespaceURI,s?null:t.firstChild?ya.call(t.childNodes):null,r,s?s.__e:t.firstChild,i,a),vh(r,n,a),n.props.children=null}ya=ua.slice,re={__e:function(n,t,e,i){for(var s,r,a;t=t.__;)if((s=t.__c)&&!s.__)try{if((r=s.constructor)&&r.getDerivedStateFromError!=null&&(s.setState(r.getDerivedStateFromError(n)),a=s.__d),s.componentDidCatch!=null&&(s.componentDidCatch(n,i||{}),a=s.__d),a)return s.__E=s}catch(o){n=o}throw n}},hh=0,Zr.prototype.setState=function(n,t){var e;e=this.__s!=null&&this.__s!=this.state?this.__s:this.__s=Jn({},this.state),typeof n=="function"&&(n=n(Jn({},e),this.props)),n&&Jn(e,n),n!=null&&this.__v&&(t&&this._sb.push(t),_c(this))},Zr.prototype.forceUpdate=function(n){this.__v&&(this.__e=!0,n&&this.__h.push(n),_c(this))},Zr.prototype.render=Me,pi=[],dh=typeof Promise=="function"?Promise.prototype.then.bind(Promise.resolve()):setTimeout,fh=function(n,t){return n.__v.__b-t.__v.__b},ha.__r=0,Da=Math.random().toString(8),Yr="__d"+Da,Os="__a"+Da,ph=/(PointerCapture)$|Capture$/i,Pl=0,Ao=xc(!1),Ro=xc(!0);var Hd=0;function b(n,t,e,i,s,r){t||(t={});var a,o,l=t;if("ref"in l)for(o in l={},t)o=="ref"?a=t[o]:l[o]=t[o];var c={type:n,props:l,key:e,ref:a,__k:null,__:null,__b:0,__e:null,__c:null,constructor:void 0,__v:--Hd,__i:-1,__u:0,__source:s,__self:r};if(typeof n=="function"&&(a=n.defaultProps))for(o in a)l[o]===void 0&&(l[o]=a[o]);return re.vnode&&re.vnode(c),c}var Hs,pe,Na,vc,Gs=0,yh=[],xe=re,Sc=xe.__b,Mc=xe.__r,yc=xe.diffed,Ec=xe.__c,bc=xe.unmount,Tc=xe.__;function Il(n,t){xe.__h&&xe.__h(pe,n,Gs||t),Gs=0;var e=pe.__H||(pe.__H={__:[],__h:[]});return n>=e.__.length&&e.__.push({}),e.__[n]}function se(n){return Gs=1,Gd(Th,n)}function Gd(n,t,e){var i=Il(Hs++,2);if(i.t=n,!i.__c&&(i.__=[Th(void 0,t),function(o){var l=i.__N?i.__N[0]:i.__[0],c=i.t(l,o);l!==c&&(i.__N=[c,i.__[1]],i.__c.setState({}))}],i.__c=pe,!pe.__f)){var s=function(o,l,c){if(!i.__c.__H)return!0;var h=!1,d=i.__c.props!==o;if(i.__c.__H.__.some(function(f){if(f.__N){h=!0;var g=f.__[0];f.__=f.__N,f.__N=void 0,g!==f.__[0]&&(d=!0)}}),r){var u=r.call(this,o,l,c);return h?u||d:u}return!h||d};pe.__f=!0;var r=pe.shouldComponentUpdate,a=pe.componentWillUpdate;pe.componentWillUpdate=function(o,l,c){if(this.__e){var h=r;r=void 0,s(o,l,c),r=h}a&&a.call(this,o,l,c)},pe.shouldComponentUpdate=s}return i.__N||i.__}function Ne(n,t){var e=Il(Hs++,3);!xe.__s&&bh(e.__H,t)&&(e.__=n,e.u=t,pe.__H.__h.push(e))}function cn(n){return Gs=5,Eh(function(){return{current:n}},[])}function Eh(n,t){var e=Il(Hs++,7);return bh(e.__H,t)&&(e.__=n(),e.__H=t,e.__h=n),e.__}function Vd(n,t){return Gs=8,Eh(function(){return n},t)}function Wd(){for(var n;n=yh.shift();){var t=n.__H;if(n.__P&&t)try{t.__h.some(Jr),t.__h.some(Co),t.__h=[]}catch(e){t.__h=[],xe.__e(e,n.__v)}}}xe.__b=function(n){pe=null,Sc&&Sc(n)},xe.__=function(n,t){n&&t.__k&&t.__k.__m&&(n.__m=t.__k.__m),Tc&&Tc(n,t)},xe.__r=function(n){Mc&&Mc(n),Hs=0;var t=(pe=n.__c).__H;t&&(Na===pe?(t.__h=[],pe.__h=[],t.__.some(function(e){e.__N&&(e.__=e.__N),e.u=e.__N=void 0})):(t.__h.some(Jr),t.__h.some(Co),t.__h=[],Hs=0)),Na=pe},xe.diffed=function(n){yc&&yc(n);var t=n.__c;t&&t.__H&&(t.__H.__h.length&&(yh.push(t)!==1&&vc===xe.requestAnimationFrame||((vc=xe.requestAnimationFrame)||Xd)(Wd)),t.__H.__.some(function(e){e.u&&(e.__H=e.u,e.u=void 0)})),Na=pe=null},xe.__c=function(n,t){t.some(function(e){try{e.__h.some(Jr),e.__h=e.__h.filter(function(i){return!i.__||Co(i)})}catch(i){t.some(function(s){s.__h&&(s.__h=[])}),t=[],xe.__e(i,e.__v)}}),Ec&&Ec(n,t)},xe.unmount=function(n){bc&&bc(n);var t,e=n.__c;e&&e.__H&&(e.__H.__.some(function(i){try{Jr(i)}catch(s){t=s}}),e.__H=void 0,t&&xe.__e(t,e.__v))};var wc=typeof requestAnimationFrame=="function";function Xd(n){var t,e=function(){clearTimeout(i),wc&&cancelAnimationFrame(t),setTimeout(n)},i=setTimeout(e,35);wc&&(t=requestAnimationFrame(e))}function Jr(n){var t=pe,e=n.__c;typeof e=="function"&&(n.__c=void 0,e()),pe=t}function Co(n){var t=pe;n.__c=n.__(),pe=t}function bh(n,t){return!n||n.length!==t.length||t.some(function(e,i){return e!==n[i]})}function Th(n,t){return typeof t=="function"?t(n):t}const qd=12e3;function $d(n,t){const e=new EventSource("/api/stream");let i=0;const s=()=>{t("on"),window.clearTimeout(i),i=window.setTimeout(()=>t("lost"),qd)};return e.addEventListener("open",s),e.addEventListener("here",s),e.addEventListener("message",r=>{s(),n(JSON.parse(r.data))}),e.addEventListener("error",()=>t("lost")),()=>{window.clearTimeout(i),e.close()}}async function Ul(n){try{const t=await n;return t.ok?{ok:!0,lost:!1,refusal:null}:{ok:!1,lost:!1,refusal:await t.json().catch(()=>null)}}catch{return{ok:!1,lost:!0,refusal:null}}}const da={get:()=>localStorage.getItem("initials")??"",set:n=>localStorage.setItem("initials",n)};function wh(){return/^[\x21-\x7e]{1,12}$/.test(da.get())?{"stylobate-initials":da.get()}:{}}function qe(n,t){const e={"content-type":"application/json",...wh()};return Ul(fetch(`/api/${n}`,{method:"POST",headers:e,body:t===void 0?null:JSON.stringify(t)}))}async function Ac(n,t,e=!1){const i=await qe("offer",{what:n,name:t.name,size:t.size});if(!i.ok)return i;const s=new URLSearchParams({name:t.name,...e?{again:"1"}:{}});return Ul(fetch(`/api/${n}?${s}`,{method:"PUT",body:t,headers:wh()}))}async function Rc(n){const t=fetch(`/api/${n}`),e=await Ul(t.then(a=>a.clone()));if(!e.ok)return e;const i=await t,s=/filename="?([^";]+)/.exec(i.headers.get("content-disposition")??"")?.[1]??n,r=document.createElement("a");return r.href=URL.createObjectURL(await i.blob()),r.download=s,r.click(),window.setTimeout(()=>URL.revokeObjectURL(r.href),1e4),e}function Ah(n,t){const[e,i]=se(null),s=cn(!1),r=cn(0);Ne(()=>{s.current&&t.job===null&&i(null)},[t]);const a=(o,l)=>{const c=++r.current;s.current=!1,i({value:o}),l.then(h=>{c===r.current&&(s.current=h.ok,h.ok||i(null))})};return[e?e.value:n,a]}function Ht(n,t){return n==null||!Number.isFinite(n)?"–":n.toFixed(t).replace("-","−")}function Rh(n){const t=new Date(n),e=i=>String(i).padStart(2,"0");return`${t.getFullYear()}-${e(t.getMonth()+1)}-${e(t.getDate())} ${e(t.getHours())}:${e(t.getMinutes())}`}const Cc={single:"single crown",bridge:"bridge",arch:"full arch"},Pc={use:"Use","do not use":"Don't use",undecided:"Can't tell",none:"No verdict yet"},st={title:"stylobate",skip:"Go to the sites",measuring:"At work on the scan",kept:n=>`Kept in ${n}`,shownFrom:n=>`Finished result, shown as it is: ${n}`,undo:"Undo",redo:"Redo",theme:{auto:"Light or dark: as this machine",light:"Light",dark:"Dark"},keys:"Keys",close:"Close",choice:{scan:n=>`scan ${n}`,again:n=>`work: ${Cc[n]??n}`,add:()=>"a site added by hand",drop:n=>`site ${n} dropped`,part:n=>`part: ${n}`,build:n=>`built with: ${n}`},work:Cc,workLabel:"What will be built",connecting:"Connecting to the program on this machine …",lost:"The program behind this page does not answer. Nothing is lost: all that was measured is kept in its folder. Looking for it …",lostHow:n=>`If it was stopped, start it again: stylobate open ${n}`,open:{label:"What is still open",nothing:"Nothing is open here.",noScan:"Drop a scan here",noScanMore:"STL, PLY or OBJ, as the scanner exports it. It stays on this machine.",noParts:"Which parts?",noPartsMore:"Drop the parts folder as a zip: the CAD surfaces of the scan bodies and their parts.toml.",choose:"Choose a file …",chooseParts:"Choose the parts …",replace:"Another scan …",dropNow:"Let go: the scan is measured at once",again:"Measure it again",measureThis:"Measure the scan that is here",missed:"Point to a missed scan body",pointNow:"Click the scan body in the picture, or press Enter to take the middle of the picture. Esc: leave it.",pointMiss:"There is no surface at that place. Click on the scan body itself.",stop:"Stop",dismiss:"All right"},stage:(n,t)=>`${n.charAt(0).toUpperCase()}${n.slice(1)}${t>0?`, ${Math.round(100*t)} %`:" …"}`,headline:(n,t)=>{const e=n.length;if(e===0)return"No scan body found in this scan";const i=e===1?"One site":`${Lc(e)} sites`,s=c=>n.filter(h=>h.verdict===c).length,[r,a,o]=[s("use"),s("do not use"),s("undecided")];if(r+a+o===0)return`${i}, no verdict yet`;if(r===e&&(t===null||t==="use"))return e===1?"Use this site":e===2?"Use both sites":`Use all ${Lc(e).toLowerCase()} sites`;if(r===e)return t==="do not use"?"Each site holds; together they don't":"Each site holds; together: can't tell";const l=[r?`use ${r}`:"",a?`don't use ${a}`:"",o?`can't tell ${o}`:"",e-r-a-o?`no verdict on ${e-r-a-o}`:""].filter(Boolean);return`${i}: ${l.join(", ")}`},none:"None of the scan bodies in the parts folder fits anything in this scan. Point to one below, or drop a scan that shows them.",verdict:Pc,build:{title:"Parts on this site",none:"No part of the folder can stand here.",notBuilt:"Nothing is built on this site: its verdict is “Don't use”. Mend the cause and scan again.",lead:(n,t)=>`${n}: the screw ${st.build.leaves(t.angle_to_aim_deg)}. ${t.chosen?"Chosen.":"Shown as the best of the options: nobody has chosen yet."}`,leaves:n=>n<.05?"channel leaves as aimed":`channel leaves ${Ht(n,1)}° off the aim`,turn:n=>`turned to mark ${n}`,turned:"Turn",tissue:"Tissue above the platform",room:"Room to the other jaw",off:"Channel off the aim",tissueOf:(n,t)=>`${Ht(n,1)} to ${Ht(t,1)}`,options:"Options, best first",more:n=>`${n} more`,take:"Take these parts",shown:"Parts",left:n=>`Parts: ${n}`},around:{title:"Tissue and the other jaw",role:{tissue:"Tissue",opposing:"Other jaw",bite:"Bite"},what:{tissue:"the same jaw without scan bodies or healing caps: how high the tissue stands",opposing:"how much room there is above each site",bite:"both jaws closed: where the other jaw lies, if it was not exported in place"},state:n=>n.joined||(n.role==="bite"?"is here":n.as_it_lies?"is here, taken as it lies":"is here, but not joined: it is not used yet"),choose:"Choose …",other:"Another …",chooseFor:n=>`Choose the scan: ${{tissue:"tissue",opposing:"other jaw",bite:"bite"}[n]}`,join:"Join them now"},frame:{title:"A frame over these sites",doubtful:n=>`Not before ${n.length===1?`site ${n[0]} is`:`sites ${n.join(", ")} are`} cleared up: what follows holds only if every site stood where it was measured.`,lead:n=>{if(n.refused)return n.refused;const t=n.probability_within_limits??0,e=t>.9995?"in nearly every case":t<5e-4?"in hardly any case":`${Math.round(1e3*t)/10} times in 100`;return`A rigid frame made to these positions would rest with gaps of at most ${Ht(n.limit_um,0)} µm, and at most ${Ht(n.side_limit_um,0)} µm sideways, ${e}.`},cause:n=>{const t=[...n.sites].sort((s,r)=>(r.share_worst??0)-(s.share_worst??0))[0],e=(n.probability_within_limits??0)>.9995?void 0:n.repeat[0],i=t?`Site ${t.site} is the worst one ${Math.round(100*(t.share_worst??0))} times in 100.`:"";return e?`${i} A second scan of site ${e.site} helps most: then ${Math.round(1e3*e.probability_within_limits)/10} times in 100.`:i},site:"Site",gap:"Gap, 95 %",side:"Sideways, 95 %",worst:"Worst one",largest:"Largest",path:({path:n,one_path:t})=>t===null?`Whether these parts share one path of insertion is open: ${n}.`:t?`These parts share one path of insertion: ${n}.`:`These parts share no path of insertion: ${n}. Choose others, or abutments that bring the axes together.`,counted:n=>`Counted: ${n.join(", ")}.`,limits:"No limit of misfit is proven. A try-in, the one-screw test and a radiograph decide."},compared:{title:"Against the scan before",lead:n=>{if(n.refused)return`The scan before (${n.before}) can't be compared: ${n.refused}`;const{moved:t,common:e,tried:i}=n;if(t.length>0)return t.map(r=>`Site ${r.site} stands otherwise than in ${n.before}: ${Ht(r.side_um,0)} µm sideways, ${Ht(r.height_um,0)} µm in height (± ${Ht(r.u95_um,0)} µm)${r.turn_deg===null?"":`, turned ${Ht(r.turn_deg,2)}°`}.`).join(" ");if(i===0){const r=n.farthest_um===null?"":` The distance between them changed by ${Ht(n.farthest_um,0)} µm at most.`;return`Only ${e} ${e===1?"site is":"sites are"} in both scans: which of them moved can't be named.${r}`}const s=n.findable_um===null?"":` A body standing ${Ht(n.findable_um,0)} µm high would be found 95 times in 100.`;return`Nothing moved since ${n.before}, as far as the two scans can show.${s}`},moved:"If the scan body was not seated: seat it, torque it, scan this site again."},beam:{title:"What could the picture show?",lead:"Mark the two ends of the scan body in the radiograph. Its true length tells how obliquely the beam fell, and so which gap this picture could show. That is noted with the check.",choose:"Choose the picture …",length:"True length of the part, mm",pixel:"Width of a pixel, mm (the sensor's data sheet states it)",first:"Click the middle of one end, or move with the arrow keys and press Enter.",second:"Now the other end.",both:"Both ends are marked; clicking again starts anew. With the two numbers below, “Passed” notes what this picture could show.",picture:"The radiograph. Arrow keys move the cross, with Shift in larger steps; Enter marks an end.",local:"The picture stays in this browser; only the marks are kept.",broken:"This file is no picture that the browser can show. Export it as PNG or JPEG."},reason:n=>{const t=n.findings[0],e=Pc[n.verdict??"none"]??"",i=n.because.replace(/\.$/,"");if(i||n.next)return{lead:e,because:i,remedy:n.next};if(n.verdict==="use")return{lead:e,because:"",remedy:""};if(!n.verdict){const r=t?Qr(t):"measured, but not judged against the limits of the work";return{lead:e,because:r,remedy:t?.advice??""}}if(t)return{lead:e,because:Qr(t),remedy:t.advice};const s=n.verdict==="undecided"?"the uncertainty reaches across the limit of the work":"beyond the limit of the work";return{lead:e,because:s,remedy:"Scan this site again from all sides, then decide."}},seen:n=>`Seen and allowed for: ${n.map(Qr).join("; ")}.`,doThis:"Do:",together:"The sites together",site:n=>`Site ${n}`,siteOn:(n,t)=>`${n} on ${t}`,bounds:{platform:"centre",axis:"axis",index:"turn",anyTurn:"any",um:"µm",deg:"°",of:"95 % bounds of this scan alone",total:"95 % bounds, all sources"},evidence:{findings:"Findings",deviation:"Deviation from the drawn part",rms:"rms",mean:"mean",p95:"95 % within",points:"points",coverage:"The scan shows",coverageOf:n=>`${Math.round(100*n)} % of the scan body`,budget:"Where the uncertainty comes from",budgetNote:"Standard uncertainty of the platform's centre, µm",noFigure:"no figure",turnOnly:n=>`turn only, ${Ht(n,2)}°`,noBudget:"This result holds the scan's own share only. What the made part, its seating and the temperature add is not in it.",total:"all that have a figure",distances:"To the other sites",alternatives:"Other readings",noAlternatives:"Every other scan body or turn fits far worse.",odds:n=>n<1.5?"as likely: this scan can't tell":`${Ht(n,n<10?1:0)} × less likely`,turned:n=>Math.abs(n)<.05?"":`, turned by ${Ht(n,0)}°`},actions:{part:"Scan body at this site",drop:"This is no site: drop it",section:"Section",sectionTurn:"Turn of the section about the axis",unseen:"Hatch what is not shown",posts:"Scan bodies",reduced:"Reduced picture",colours:"Colours",range:"Range of the colours",rangeValue:n=>`± ${n} µm`,inside:"inside",outside:"outside",whole:"Whole arch",show:n=>`Show site ${n}`},case:{initials:"Your initials",title:n=>`Case ${n}`,tooth:"Which tooth?",toothNone:"not named yet",quadrants:["Upper right","Upper left","Lower left","Lower right"],noTooth:"Open: which tooth?",checks:"Checks at the chair",checksOpen:n=>`Open: ${n===1?"one check":`${n} checks`}, then release`,toRelease:"Open: release",released:n=>`Released by ${n}`,passed:"passed",failed:"not passed",missing:"not done for this scan",pass:"Passed",fail:"Not passed",again:"Check again",ncm:"Torque used, in newton centimetres",unit:"Number of the scan body",target:(n,t)=>n===t?`target ${n} N·cm`:`target ${n} to ${t} N·cm`,reason:(n,t)=>{const i=[t?"the verdict is not “Use”":"",n===1?"one check is open":n?`${n} checks are open`:""].filter(Boolean).join(" and ");return`${i.charAt(0).toUpperCase()}${i.slice(1)}: to release it all the same, write the reason`},release:n=>`Release tooth ${n} for the work`,withdraw:"Take the release back",handOver:"Hand over",notReleased:n=>`${n===1?"One site is":`${n} sites are`} not released. The report says so; it does not stop the package.`,allReleased:"Every site is released.",report:"Report (PDF)",package:"Package for the laboratory",work:n=>`for a ${n}`},notShown:"What no scan can show",notShownLead:"Check these at the chair before the positions are used.",warnings:"About this scan",capital:n=>n.charAt(0).toUpperCase()+n.slice(1),showPlace:"Show the place",partial:"The scan itself is not here: only the surroundings of the sites are shown. Start with --scan to see all of it.",noSurface:"There is no surface to show: neither the scan nor the sites' coloured surfaces are here.",reduced:n=>`Reduced picture, ${Math.max(1,Math.round(100*n))} % of the triangles; figures are of the whole scan`,loading:"Fetching the surface …",noGl:"This browser draws no 3D here. Everything else works.",watch:(n,t)=>t?`Watching ${n}; last: ${t}`:`Watching ${n} for a new scan`,triangles:n=>`${n.toLocaleString("en")} triangles`,caution:"Decision support, not a medical device. A scan cannot show whether a scan body was fully seated: torque and a radiograph do. The licensed clinician decides.",picture:"The arch in 3D. Arrow keys turn it, plus and minus come nearer and go away, 1 to 9 go to a site, 0 shows the whole arch.",keysList:[["1 … 9","go to a site"],["0","whole arch"],["N, P","next, previous site"],["Arrows","turn the picture (when it has the focus)"],["+, −","nearer, away"],["[, ]","smaller, larger range of the colours"],["S","section on or off"],["H","hatch what is not shown"],["D","drop a scan: choose the file"],["U, Shift+U","undo, redo"],["Esc","back"],["?","this list"]]};function Qr(n){if(n.size_deg!==null){const e=n.u95_deg===null?"":` (± ${Ht(n.u95_deg,2)}°)`;return`${n.cause}, ${Ht(n.size_deg,2)}°${e}`}if(n.size_um===null)return n.cause;const t=n.u95_um===null?"":` (± ${Ht(n.u95_um,0)} µm)`;return`${n.cause}, ${Ht(n.size_um,0)} µm${t}`}const Yd=Qr;function Lc(n){return["No","One","Two","Three","Four","Five","Six","Seven","Eight","Nine","Ten","Eleven","Twelve"][n]??String(n)}const Dc=5;function Kd({site:n,state:t,settled:e}){const i=st.build,{placement:s}=t;if(!s)return null;const r=s.sites.find(a=>a.site===n.site);return r?b("section",{class:"parts",children:[b("h3",{children:i.title}),b("p",{children:r.chain.length===0?i.none:i.lead(Ch(r.chain,r),r)}),r.chain.length>0&&b(Zd,{placed:r}),r.notes.length>0&&b("ul",{class:"plain",children:r.notes.map(a=>b("li",{children:a}))}),s.refused&&b("p",{class:"note",children:i.left(s.refused)}),r.options.length>1&&b(Jd,{placed:r,state:t,settled:e})]}):b("section",{class:"parts",children:[b("h3",{children:i.title}),b("p",{children:n.verdict==="do not use"?i.notBuilt:s.refused})]})}function Zd({placed:n}){const t=st.build;return b("dl",{class:"numbers",children:[b("div",{children:[b("dt",{children:t.off}),b("dd",{children:[Ht(n.angle_to_aim_deg,1),b("i",{children:"°"})]})]}),n.tissue_least_mm!==null&&n.tissue_greatest_mm!==null&&b("div",{children:[b("dt",{children:t.tissue}),b("dd",{children:[t.tissueOf(n.tissue_least_mm,n.tissue_greatest_mm)," ",b("i",{children:"mm"})]})]}),n.room_mm!==null&&b("div",{children:[b("dt",{children:t.room}),b("dd",{children:[Ht(n.room_mm,1)," ",b("i",{children:"mm"})]})]})]})}function Jd({placed:n,state:t,settled:e}){const i=st.build,s=`options-${n.site}`,[r,a]=Ah(n.chosen?ir(n.chain):"",t),o=h=>{const d=qe("site/chain",{site:n.site,chain:h.chain});a(ir(h.chain),d),d.then(e)},l=h=>b("li",{children:b("label",{class:"option",children:[b("input",{type:"radio",name:s,checked:ir(h.chain)===r,disabled:t.read_only||t.job!==null,onChange:()=>o(h)}),b("span",{children:[Ch(h.chain,n),b("small",{children:[i.leaves(h.angle_to_aim_deg),...h.notes].join("; ")})]})]})}),c=n.options.slice(Dc);return b("fieldset",{class:"options",children:[b("legend",{children:i.options}),b("ul",{class:"plain",children:n.options.slice(0,Dc).map(l)}),c.length>0&&b("details",{open:c.some(h=>ir(h.chain)===r),children:[b("summary",{children:i.more(c.length)}),b("ul",{class:"plain",children:c.map(l)})]})]})}function Ch(n,t){const e=n.map(s=>s.part).join(),i=t.options.filter(s=>s.chain.map(r=>r.part).join()===e).length>1;return n.map((s,r)=>i&&r===0?`${s.part} (${st.build.turn(s.turn)})`:s.part).join(" + ")}function ir(n){return n.map(t=>`${t.part}@${t.turn}`).join(",")}function Qd({state:n}){const{compared:t}=n;return t?b("section",{class:"block against",role:"status",children:[b("h2",{children:st.compared.title}),b("p",{children:st.compared.lead(t)}),t.moved.length>0&&b("p",{children:[b("b",{children:st.doThis})," ",st.compared.moved]})]}):null}function jd({state:n}){const t=st.frame,{frame:e}=n;if(!e)return null;const i=n.result.sites.filter(s=>s.verdict!==null&&s.verdict!=="use").map(s=>s.site);return b("section",{class:"block frame",children:[b("h2",{children:t.title}),!e.refused&&i.length>0&&b("p",{class:"doubtful",children:b("strong",{children:t.doubtful(i)})}),b("p",{children:[b("strong",{children:t.lead(e)})," ",!e.refused&&t.cause(e)]}),!e.refused&&b(Me,{children:[b("table",{class:"pairs",children:[b("thead",{children:b("tr",{children:[b("th",{scope:"col",children:t.site}),b("th",{scope:"col",children:t.gap}),b("th",{scope:"col",children:t.side}),b("th",{scope:"col",children:t.worst})]})}),b("tbody",{children:[e.sites.map(s=>b("tr",{children:[b("th",{scope:"row",children:s.site}),b("td",{children:[Ht(s.gap_p95_um,0)," ",b("i",{children:"µm"})]}),b("td",{children:[Ht(s.side_p95_um,0)," ",b("i",{children:"µm"})]}),b("td",{children:[Ht(100*(s.share_worst??0),0)," ",b("i",{children:"%"})]})]})),b("tr",{children:[b("th",{scope:"row",children:t.largest}),b("td",{children:[Ht(e.worst_gap_p95_um,0)," ",b("i",{children:"µm"})]}),b("td",{children:[Ht(e.worst_side_p95_um,0)," ",b("i",{children:"µm"})]}),b("td",{})]})]})]}),n.placement?.path&&b("p",{children:t.path(n.placement)}),b("p",{class:"note",children:[t.counted(e.counted)," ",e.notes.join(" ")," ",t.limits]})]})]})}const tf=2,ef=20,nf=9;function sf({tell:n}){const t=st.beam,[e,i]=se(null),[s,r]=se(!1),[a,o]=se([]),[l,c]=se(""),[h,d]=se(""),u=cn(null),f=cn(null),g=cn([0,0]);Ne(()=>{const[y,v]=a,[M,A]=[l,h].map(_=>Number(_.replace(",",".")));n(y&&v&&M>0&&A>0?{length:M,ends:[...y,...v],pixel:A}:null)},[a,l,h]);const S=()=>{f.current&&e&&rf(f.current,e,[...a,g.current])};Ne(S,[e,a]);const m=y=>{createImageBitmap(y).then(v=>{g.current=[v.width/2,v.height/2],i(v),o([]),r(!1)},()=>r(!0))},p=()=>o(y=>y.length<2?[...y,g.current]:[g.current]),x=y=>{const v=y.shiftKey?ef:tf,A={ArrowLeft:[-v,0],ArrowRight:[v,0],ArrowUp:[0,-v],ArrowDown:[0,v]}[y.key];if(!(!A&&y.key!=="Enter")){if(y.preventDefault(),y.stopPropagation(),!A)return p();g.current=[g.current[0]+A[0],g.current[1]+A[1]],S()}};return b("details",{class:"beam",children:[b("summary",{children:t.title}),b("p",{class:"note",children:[t.lead," ",t.local]}),b("button",{type:"button",class:"small",onClick:()=>u.current?.click(),children:t.choose}),b("input",{ref:u,type:"file",accept:"image/*",hidden:!0,"aria-label":t.choose,onChange:y=>{const v=y.currentTarget.files?.[0];v&&m(v)}}),s&&b("p",{role:"alert",children:t.broken}),e&&b(Me,{children:[b("p",{role:"status",children:[t.first,t.second,t.both][a.length]}),b("canvas",{ref:f,width:e.width,height:e.height,tabIndex:0,role:"img","aria-label":t.picture,onKeyDown:x,onClick:y=>{const v=y.currentTarget.getBoundingClientRect(),M=e.width/v.width;g.current=[(y.clientX-v.left)*M,(y.clientY-v.top)*M],p()}}),b("label",{children:[t.length," ",b("input",{type:"text",inputMode:"decimal",size:7,value:l,onInput:y=>c(y.currentTarget.value)})]}),b("label",{children:[t.pixel," ",b("input",{type:"text",inputMode:"decimal",size:7,value:h,onInput:y=>d(y.currentTarget.value)})]})]})]})}function rf(n,t,e){const i=n.getContext("2d");if(!i)return;i.drawImage(t,0,0);const s=nf*t.width/Math.max(n.clientWidth,1);for(const[r,a]of[["#000",s/2.5],["#ffd166",s/6]]){i.strokeStyle=r,i.lineWidth=a,i.beginPath();for(const[o,l]of e)i.moveTo(o-s,l),i.lineTo(o+s,l),i.moveTo(o,l-s),i.lineTo(o,l+s);i.stroke()}}const af=[[18,11,-1],[21,28,1],[38,31,-1],[41,48,1]],of=af.map(([n,t,e])=>Array.from({length:8},(i,s)=>String(e>0?n+s:n-s)).filter(i=>Number(i)>=Math.min(n,t)));function lf(){const[n,t]=se(da.get());return b("label",{class:`initials ${n?"":"wanted"}`,children:[st.case.initials,b("input",{type:"text",size:5,maxLength:12,autocomplete:"off",spellcheck:!1,value:n,onKeyDown:e=>{e.key==="Enter"&&e.currentTarget.blur()},onInput:e=>{t(e.currentTarget.value.trim()),da.set(e.currentTarget.value.trim())}})]})}function cf(n){if(!n)return st.case.noTooth;const t=n.checks.filter(e=>!e.ok).length;return n.released_by?st.case.released(n.released_by):t>0?st.case.checksOpen(t):st.case.toRelease}function uf({site:n,state:t,settled:e}){const i=st.case,s=t.case?.sites.find(a=>a.site===n.site),r=a=>void qe("case/tooth",{site:n.site,tooth:a}).then(e);return b("section",{class:"case-site",children:[b("label",{class:"tooth",children:[i.tooth,b("select",{value:s?.tooth??"",onChange:a=>r(a.currentTarget.value),children:[b("option",{value:"",children:i.toothNone}),of.map((a,o)=>b("optgroup",{label:i.quadrants[o],children:a.map(l=>b("option",{value:l,children:l}))}))]})]}),s&&b(Me,{children:[b("h3",{children:i.checks}),b("ul",{class:"checks-list",children:s.checks.map(a=>b(hf,{held:s,check:a,settled:e},`${s.tooth}-${a.kind}-${a.time}`))}),b(df,{held:s,site:n,settled:e})]})]})}function hf({held:n,check:t,settled:e}){const i=st.case,[s,r]=se(""),[a,o]=se(!1),[l,c]=se(null),h=t.kind==="torque"||t.kind==="unit",d=g=>void qe("case/check",{tooth:n.tooth,kind:t.kind,ok:g,value:s,marks:l}).then(e),u=t.ok!==null,f=t.kind==="torque"&&n.torque_ncm?i.target(n.torque_ncm[0],n.torque_ncm[1]):"";return b("li",{class:t.ok?"passed":u?"failed":"missing",children:[b("p",{children:[b("strong",{children:t.question}),f&&b("i",{children:[" ",f]}),b("span",{class:"made",children:u?`${t.ok?i.passed:i.failed}${t.value?`: ${t.value}`:""} · ${t.by}, ${Rh(t.time)}`:i.missing})]}),u&&!a?b("button",{type:"button",class:"quiet small",onClick:()=>o(!0),children:i.again}):b(Me,{children:[t.kind==="radiograph"&&b(sf,{tell:c}),b("div",{class:"row",children:[h&&b("input",{type:"text",size:9,value:s,inputMode:t.kind==="torque"?"decimal":"text","aria-label":t.kind==="torque"?i.ncm:i.unit,placeholder:t.kind==="torque"?"N·cm":"AT-0042",onInput:g=>r(g.currentTarget.value)}),b("button",{type:"button",class:"small",disabled:h&&!s.trim(),"aria-label":`${t.question}: ${i.pass}`,onClick:()=>d(!0),children:i.pass}),b("button",{type:"button",class:"small quiet","aria-label":`${t.question}: ${i.fail}`,onClick:()=>d(!1),children:i.fail})]})]})]})}function df({held:n,site:t,settled:e}){const i=st.case,[s,r]=se(""),a=t.verdict!=="use"||n.checks.some(l=>!l.ok),o=l=>void qe("case/release",{tooth:n.tooth,reason:s,withdraw:l}).then(e);return n.released_by?b("div",{class:"release done",children:[b("p",{children:[b("strong",{children:i.released(n.released_by)}),", ",Rh(n.released_at),n.reason&&`: ${n.reason}`]}),b("button",{type:"button",class:"quiet small",onClick:()=>o(!0),children:i.withdraw})]}):b("div",{class:"release",children:[a&&b("label",{children:[i.reason(n.checks.filter(l=>!l.ok).length,t.verdict!=="use"),b("input",{type:"text",maxLength:2e3,value:s,onInput:l=>r(l.currentTarget.value)})]}),b("button",{type:"button",class:a?"":"primary",disabled:a&&s.trim().length<3,onClick:()=>o(!1),children:i.release(n.tooth)})]})}function ff({state:n,settled:t}){const e=st.case,i=n.job!==null,s=n.case?n.result.sites.length-n.case.sites.filter(r=>r.released_by).length:0;return b("section",{class:"block hand-over",children:[b("h2",{children:e.handOver}),n.case&&b("p",{class:"note",children:s>0?e.notReleased(s):e.allReleased}),b("div",{class:"row",children:[b("button",{type:"button",disabled:i,onClick:()=>void Rc("report.pdf").then(t),children:e.report}),n.case&&b("button",{type:"button",class:s?"":"primary",disabled:i,onClick:()=>void Rc("package.zip").then(t),children:e.package})]})]})}function Fl({verdict:n,size:t=28,text:e}){const i=n??"none";return b("svg",{class:`mark mark-${i.replaceAll(" ","-")}`,width:t,height:t,viewBox:"0 0 28 28","aria-hidden":"true",children:[i==="use"&&b("circle",{cx:"14",cy:"14",r:"13"}),i==="do not use"&&b("path",{d:"M8.6 1h10.8L27 8.6v10.8L19.4 27H8.6L1 19.4V8.6z"}),i==="undecided"&&b("path",{d:"M14 1.5 27 25.5H1z","stroke-linejoin":"round"}),i==="none"&&b("circle",{cx:"14",cy:"14",r:"12",class:"ring"}),e!==void 0?b("text",{x:"14",y:i==="undecided"?22.5:19,"text-anchor":"middle",children:e}):b(Me,{children:[i==="use"&&b("path",{class:"sign",d:"m7.5 14.5 4.5 4.5 8.5-9.5"}),i==="do not use"&&b("path",{class:"sign",d:"M7 14h14"}),i==="undecided"&&b("text",{x:"14",y:"22.5","text-anchor":"middle",children:"?"}),i==="none"&&b("path",{class:"sign",d:"M9 14h.01M14 14h.01M19 14h.01"})]})]})}const Ks="187",fs={ROTATE:0,DOLLY:1,PAN:2},hs={ROTATE:0,PAN:1,DOLLY_PAN:2,DOLLY_ROTATE:3},pf=0,Nc=1,mf=2,jr=1,_f=2,Us=3,ni=0,Qe=1,rn=2,ps=0,Bs=1,Ic=2,Uc=3,Fc=4,gf=5,cs=100,xf=101,vf=102,Sf=103,Mf=104,yf=200,Ef=201,bf=202,Tf=203,Ph=204,Lh=205,wf=206,Af=207,Rf=208,Cf=209,Pf=210,Lf=211,Df=212,Nf=213,If=214,Po=0,Lo=1,Do=2,Vs=3,No=4,Io=5,Uo=6,Fo=7,Ol=0,Uf=1,Ff=2,ti=0,Dh=1,Nh=2,Ih=3,Uh=4,Fh=5,Oh=6,Bh=7,zh=300,_s=301,Ws=302,Ia=303,Ua=304,Oo=1e3,Qn=1001,Bo=1002,ke=1003,Of=1004,sr=1005,$e=1006,Fa=1007,gi=1008,ln=1009,kh=1010,Hh=1011,Xs=1012,Bl=1013,Hn=1014,Bn=1015,Gn=1016,zl=1017,kl=1018,gs=1020,Gh=35902,Vh=35899,Wh=1021,Xh=1022,zn=1023,Si=1026,xi=1027,qh=1028,Hl=1029,Oi=1030,Gl=1031,Vl=1033,ta=33776,ea=33777,na=33778,ia=33779,zo=35840,ko=35841,Ho=35842,Go=35843,Vo=36196,Wo=37492,Xo=37496,qo=37488,$o=37489,fa=37490,Yo=37491,Ko=37808,Zo=37809,Jo=37810,Qo=37811,jo=37812,tl=37813,el=37814,nl=37815,il=37816,sl=37817,rl=37818,al=37819,ol=37820,ll=37821,cl=36492,ul=36494,hl=36495,dl=36283,fl=36284,pa=36285,pl=36286,Bf=3200,ml=0,zf=1,_i="",xn="srgb",jn="srgb-linear",ma="linear",te="srgb",Oa=7680,kf=519,Hf=512,Gf=513,Vf=514,$h=515,Wf=516,Xf=517,Yh=518,Kh=519,Zh=35044,Oc="300 es",Pn=2e3,qs=2001;function qf(n){for(let t=n.length-1;t>=0;--t)if(n[t]>=65535)return!0;return!1}function _a(n){return document.createElementNS("http://www.w3.org/1999/xhtml",n)}function $f(){const n=_a("canvas");return n.style.display="block",n}const Bc={};function ga(...n){const t="THREE."+n.shift();console.log(t,...n)}function Jh(n){const t=n[0];if(typeof t=="string"&&t.startsWith("TSL:")){const e=n[1];e&&e.isStackTrace?n[0]+=" "+e.getLocation():n[1]='Stack trace not available. Enable "THREE.Node.captureStackTrace" to capture stack traces.'}return n}function Lt(...n){n=Jh(n);const t="THREE."+n.shift();{const e=n[0];e&&e.isStackTrace?console.warn(e.getError(t)):console.warn(t,...n)}}function Zt(...n){n=Jh(n);const t="THREE."+n.shift();{const e=n[0];e&&e.isStackTrace?console.error(e.getError(t)):console.error(t,...n)}}function sa(...n){const t=n.join(" ");t in Bc||(Bc[t]=!0,Lt(...n))}function Yf(n,t,e){return new Promise(function(i,s){function r(){switch(n.clientWaitSync(t,n.SYNC_FLUSH_COMMANDS_BIT,0)){case n.WAIT_FAILED:s();break;case n.TIMEOUT_EXPIRED:setTimeout(r,e);break;default:i()}}setTimeout(r,e)})}const Kf={[Po]:Po,[Do]:Uo,[No]:No,[Vs]:Io,[Lo]:Lo,[Uo]:Do,[Fo]:Fo,[Io]:Vs};class Ei{addEventListener(t,e){this._listeners===void 0&&(this._listeners={});const i=this._listeners;i[t]===void 0&&(i[t]=[]),i[t].indexOf(e)===-1&&i[t].push(e)}hasEventListener(t,e){const i=this._listeners;return i===void 0?!1:i[t]!==void 0&&i[t].indexOf(e)!==-1}removeEventListener(t,e){const i=this._listeners;if(i===void 0)return;const s=i[t];if(s!==void 0){const r=s.indexOf(e);r!==-1&&s.splice(r,1)}}dispatchEvent(t){const e=this._listeners;if(e===void 0)return;const i=e[t.type];if(i!==void 0){t.target=this;const s=i.slice(0);for(let r=0,a=s.length;r<a;r++)s[r].call(this,t);t.target=null}}}const We=["00","01","02","03","04","05","06","07","08","09","0a","0b","0c","0d","0e","0f","10","11","12","13","14","15","16","17","18","19","1a","1b","1c","1d","1e","1f","20","21","22","23","24","25","26","27","28","29","2a","2b","2c","2d","2e","2f","30","31","32","33","34","35","36","37","38","39","3a","3b","3c","3d","3e","3f","40","41","42","43","44","45","46","47","48","49","4a","4b","4c","4d","4e","4f","50","51","52","53","54","55","56","57","58","59","5a","5b","5c","5d","5e","5f","60","61","62","63","64","65","66","67","68","69","6a","6b","6c","6d","6e","6f","70","71","72","73","74","75","76","77","78","79","7a","7b","7c","7d","7e","7f","80","81","82","83","84","85","86","87","88","89","8a","8b","8c","8d","8e","8f","90","91","92","93","94","95","96","97","98","99","9a","9b","9c","9d","9e","9f","a0","a1","a2","a3","a4","a5","a6","a7","a8","a9","aa","ab","ac","ad","ae","af","b0","b1","b2","b3","b4","b5","b6","b7","b8","b9","ba","bb","bc","bd","be","bf","c0","c1","c2","c3","c4","c5","c6","c7","c8","c9","ca","cb","cc","cd","ce","cf","d0","d1","d2","d3","d4","d5","d6","d7","d8","d9","da","db","dc","dd","de","df","e0","e1","e2","e3","e4","e5","e6","e7","e8","e9","ea","eb","ec","ed","ee","ef","f0","f1","f2","f3","f4","f5","f6","f7","f8","f9","fa","fb","fc","fd","fe","ff"],ra=Math.PI/180,_l=180/Math.PI;function Bi(){const n=Math.random()*4294967295|0,t=Math.random()*4294967295|0,e=Math.random()*4294967295|0,i=Math.random()*4294967295|0;return(We[n&255]+We[n>>8&255]+We[n>>16&255]+We[n>>24&255]+"-"+We[t&255]+We[t>>8&255]+"-"+We[t>>16&15|64]+We[t>>24&255]+"-"+We[e&63|128]+We[e>>8&255]+"-"+We[e>>16&255]+We[e>>24&255]+We[i&255]+We[i>>8&255]+We[i>>16&255]+We[i>>24&255]).toLowerCase()}function Ot(n,t,e){return Math.max(t,Math.min(e,n))}function Zf(n,t){return(n%t+t)%t}function Ba(n,t,e){return(1-e)*n+e*t}function Jf(n){return Math.pow(2,Math.floor(Math.log(n)/Math.LN2))}function ba(n){switch(n.constructor){case Uint32Array:return 4294967295;case Uint16Array:return 65535;case Uint8Array:case Uint8ClampedArray:return 255;case Int32Array:return 2147483647;case Int16Array:return 32767;case Int8Array:return 127;default:return}}function Qh(n,t){if(t.constructor===Float32Array)return n;const e=ba(t);if(e===void 0)throw new Error("THREE.MathUtils: Invalid component type.");return Math.max(n/e,-1)}function jh(n,t){if(t.constructor===Float32Array)return n;const e=ba(t);if(e===void 0)throw new Error("THREE.MathUtils: Invalid component type.");return Math.round(n*e)}const Qf={DEG2RAD:ra};class Rt{static{this.prototype.isVector2=!0}constructor(t=0,e=0){this.x=t,this.y=e}get width(){return this.x}set width(t){this.x=t}get height(){return this.y}set height(t){this.y=t}set(t,e){return this.x=t,this.y=e,this}setScalar(t){return this.x=t,this.y=t,this}setX(t){return this.x=t,this}setY(t){return this.y=t,this}setComponent(t,e){switch(t){case 0:this.x=e;break;case 1:this.y=e;break;default:throw new Error("THREE.Vector2: index is out of range: "+t)}return this}getComponent(t){switch(t){case 0:return this.x;case 1:return this.y;default:throw new Error("THREE.Vector2: index is out of range: "+t)}}clone(){return new this.constructor(this.x,this.y)}copy(t){return this.x=t.x,this.y=t.y,this}add(t){return this.x+=t.x,this.y+=t.y,this}addScalar(t){return this.x+=t,this.y+=t,this}addVectors(t,e){return this.x=t.x+e.x,this.y=t.y+e.y,this}addScaledVector(t,e){return this.x+=t.x*e,this.y+=t.y*e,this}sub(t){return this.x-=t.x,this.y-=t.y,this}subScalar(t){return this.x-=t,this.y-=t,this}subVectors(t,e){return this.x=t.x-e.x,this.y=t.y-e.y,this}multiply(t){return this.x*=t.x,this.y*=t.y,this}multiplyScalar(t){return this.x*=t,this.y*=t,this}divide(t){return this.x/=t.x,this.y/=t.y,this}divideScalar(t){return this.multiplyScalar(1/t)}applyMatrix3(t){const e=this.x,i=this.y,s=t.elements;return this.x=s[0]*e+s[3]*i+s[6],this.y=s[1]*e+s[4]*i+s[7],this}min(t){return this.x=Math.min(this.x,t.x),this.y=Math.min(this.y,t.y),this}max(t){return this.x=Math.max(this.x,t.x),this.y=Math.max(this.y,t.y),this}clamp(t,e){return this.x=Ot(this.x,t.x,e.x),this.y=Ot(this.y,t.y,e.y),this}clampScalar(t,e){return this.x=Ot(this.x,t,e),this.y=Ot(this.y,t,e),this}clampLength(t,e){const i=this.length();return this.divideScalar(i||1).multiplyScalar(Ot(i,t,e))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this}negate(){return this.x=-this.x,this.y=-this.y,this}dot(t){return this.x*t.x+this.y*t.y}cross(t){return this.x*t.y-this.y*t.x}lengthSq(){return this.x*this.x+this.y*this.y}length(){return Math.sqrt(this.x*this.x+this.y*this.y)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)}normalize(){return this.divideScalar(this.length()||1)}angle(){return Math.atan2(-this.y,-this.x)+Math.PI}angleTo(t){const e=Math.sqrt(this.lengthSq()*t.lengthSq());if(e===0)return Math.PI/2;const i=this.dot(t)/e;return Math.acos(Ot(i,-1,1))}distanceTo(t){return Math.sqrt(this.distanceToSquared(t))}distanceToSquared(t){const e=this.x-t.x,i=this.y-t.y;return e*e+i*i}manhattanDistanceTo(t){return Math.abs(this.x-t.x)+Math.abs(this.y-t.y)}setLength(t){return this.normalize().multiplyScalar(t)}lerp(t,e){return this.x+=(t.x-this.x)*e,this.y+=(t.y-this.y)*e,this}lerpVectors(t,e,i){return this.x=t.x+(e.x-t.x)*i,this.y=t.y+(e.y-t.y)*i,this}equals(t){return t.x===this.x&&t.y===this.y}fromArray(t,e=0){return this.x=t[e],this.y=t[e+1],this}toArray(t=[],e=0){return t[e]=this.x,t[e+1]=this.y,t}fromBufferAttribute(t,e){return this.x=t.getX(e),this.y=t.getY(e),this}rotateAround(t,e){const i=Math.cos(e),s=Math.sin(e),r=this.x-t.x,a=this.y-t.y;return this.x=r*i-a*s+t.x,this.y=r*s+a*i+t.y,this}random(){return this.x=Math.random(),this.y=Math.random(),this}*[Symbol.iterator](){yield this.x,yield this.y}}class Mi{constructor(t=0,e=0,i=0,s=1){this.isQuaternion=!0,this._x=t,this._y=e,this._z=i,this._w=s}static slerpFlat(t,e,i,s,r,a,o){let l=i[s+0],c=i[s+1],h=i[s+2],d=i[s+3],u=r[a+0],f=r[a+1],g=r[a+2],S=r[a+3];if(d!==S||l!==u||c!==f||h!==g){let m=l*u+c*f+h*g+d*S;m<0&&(u=-u,f=-f,g=-g,S=-S,m=-m);let p=1-o;if(m<.9995){const x=Math.acos(m),y=Math.sin(x);p=Math.sin(p*x)/y,o=Math.sin(o*x)/y,l=l*p+u*o,c=c*p+f*o,h=h*p+g*o,d=d*p+S*o}else{l=l*p+u*o,c=c*p+f*o,h=h*p+g*o,d=d*p+S*o;const x=1/Math.sqrt(l*l+c*c+h*h+d*d);l*=x,c*=x,h*=x,d*=x}}t[e]=l,t[e+1]=c,t[e+2]=h,t[e+3]=d}static multiplyQuaternionsFlat(t,e,i,s,r,a){const o=i[s],l=i[s+1],c=i[s+2],h=i[s+3],d=r[a],u=r[a+1],f=r[a+2],g=r[a+3];return t[e]=o*g+h*d+l*f-c*u,t[e+1]=l*g+h*u+c*d-o*f,t[e+2]=c*g+h*f+o*u-l*d,t[e+3]=h*g-o*d-l*u-c*f,t}get x(){return this._x}set x(t){this._x=t,this._onChangeCallback()}get y(){return this._y}set y(t){this._y=t,this._onChangeCallback()}get z(){return this._z}set z(t){this._z=t,this._onChangeCallback()}get w(){return this._w}set w(t){this._w=t,this._onChangeCallback()}set(t,e,i,s){return this._x=t,this._y=e,this._z=i,this._w=s,this._onChangeCallback(),this}clone(){return new this.constructor(this._x,this._y,this._z,this._w)}copy(t){return this._x=t.x,this._y=t.y,this._z=t.z,this._w=t.w,this._onChangeCallback(),this}setFromEuler(t,e=!0){const i=t._x,s=t._y,r=t._z,a=t._order,o=Math.cos,l=Math.sin,c=o(i/2),h=o(s/2),d=o(r/2),u=l(i/2),f=l(s/2),g=l(r/2);switch(a){case"XYZ":this._x=u*h*d+c*f*g,this._y=c*f*d-u*h*g,this._z=c*h*g+u*f*d,this._w=c*h*d-u*f*g;break;case"YXZ":this._x=u*h*d+c*f*g,this._y=c*f*d-u*h*g,this._z=c*h*g-u*f*d,this._w=c*h*d+u*f*g;break;case"ZXY":this._x=u*h*d-c*f*g,this._y=c*f*d+u*h*g,this._z=c*h*g+u*f*d,this._w=c*h*d-u*f*g;break;case"ZYX":this._x=u*h*d-c*f*g,this._y=c*f*d+u*h*g,this._z=c*h*g-u*f*d,this._w=c*h*d+u*f*g;break;case"YZX":this._x=u*h*d+c*f*g,this._y=c*f*d+u*h*g,this._z=c*h*g-u*f*d,this._w=c*h*d-u*f*g;break;case"XZY":this._x=u*h*d-c*f*g,this._y=c*f*d-u*h*g,this._z=c*h*g+u*f*d,this._w=c*h*d+u*f*g;break;default:Lt("Quaternion: .setFromEuler() encountered an unknown order: "+a)}return e===!0&&this._onChangeCallback(),this}setFromAxisAngle(t,e){const i=e/2,s=Math.sin(i);return this._x=t.x*s,this._y=t.y*s,this._z=t.z*s,this._w=Math.cos(i),this._onChangeCallback(),this}setFromRotationMatrix(t){const e=t.elements,i=e[0],s=e[4],r=e[8],a=e[1],o=e[5],l=e[9],c=e[2],h=e[6],d=e[10],u=i+o+d;if(u>0){const f=.5/Math.sqrt(u+1);this._w=.25/f,this._x=(h-l)*f,this._y=(r-c)*f,this._z=(a-s)*f}else if(i>o&&i>d){const f=2*Math.sqrt(1+i-o-d);this._w=(h-l)/f,this._x=.25*f,this._y=(s+a)/f,this._z=(r+c)/f}else if(o>d){const f=2*Math.sqrt(1+o-i-d);this._w=(r-c)/f,this._x=(s+a)/f,this._y=.25*f,this._z=(l+h)/f}else{const f=2*Math.sqrt(1+d-i-o);this._w=(a-s)/f,this._x=(r+c)/f,this._y=(l+h)/f,this._z=.25*f}return this._onChangeCallback(),this}setFromUnitVectors(t,e){let i=t.dot(e)+1;return i<1e-8?(i=0,Math.abs(t.x)>Math.abs(t.z)?(this._x=-t.y,this._y=t.x,this._z=0,this._w=i):(this._x=0,this._y=-t.z,this._z=t.y,this._w=i)):(this._x=t.y*e.z-t.z*e.y,this._y=t.z*e.x-t.x*e.z,this._z=t.x*e.y-t.y*e.x,this._w=i),this.normalize()}angleTo(t){return 2*Math.acos(Math.abs(Ot(this.dot(t),-1,1)))}rotateTowards(t,e){const i=this.angleTo(t);if(i===0)return this;const s=Math.min(1,e/i);return this.slerp(t,s),this}identity(){return this.set(0,0,0,1)}invert(){return this.conjugate()}conjugate(){return this._x*=-1,this._y*=-1,this._z*=-1,this._onChangeCallback(),this}dot(t){return this._x*t._x+this._y*t._y+this._z*t._z+this._w*t._w}lengthSq(){return this._x*this._x+this._y*this._y+this._z*this._z+this._w*this._w}length(){return Math.sqrt(this._x*this._x+this._y*this._y+this._z*this._z+this._w*this._w)}normalize(){let t=this.length();return t===0?(this._x=0,this._y=0,this._z=0,this._w=1):(t=1/t,this._x=this._x*t,this._y=this._y*t,this._z=this._z*t,this._w=this._w*t),this._onChangeCallback(),this}multiply(t){return this.multiplyQuaternions(this,t)}premultiply(t){return this.multiplyQuaternions(t,this)}multiplyQuaternions(t,e){const i=t._x,s=t._y,r=t._z,a=t._w,o=e._x,l=e._y,c=e._z,h=e._w;return this._x=i*h+a*o+s*c-r*l,this._y=s*h+a*l+r*o-i*c,this._z=r*h+a*c+i*l-s*o,this._w=a*h-i*o-s*l-r*c,this._onChangeCallback(),this}slerp(t,e){let i=t._x,s=t._y,r=t._z,a=t._w,o=this.dot(t);o<0&&(i=-i,s=-s,r=-r,a=-a,o=-o);let l=1-e;if(o<.9995){const c=Math.acos(o),h=Math.sin(c);l=Math.sin(l*c)/h,e=Math.sin(e*c)/h,this._x=this._x*l+i*e,this._y=this._y*l+s*e,this._z=this._z*l+r*e,this._w=this._w*l+a*e,this._onChangeCallback()}else this._x=this._x*l+i*e,this._y=this._y*l+s*e,this._z=this._z*l+r*e,this._w=this._w*l+a*e,this.normalize();return this}slerpQuaternions(t,e,i){return this.copy(t).slerp(e,i)}random(){const t=2*Math.PI*Math.random(),e=2*Math.PI*Math.random(),i=Math.random(),s=Math.sqrt(1-i),r=Math.sqrt(i);return this.set(s*Math.sin(t),s*Math.cos(t),r*Math.sin(e),r*Math.cos(e))}equals(t){return t._x===this._x&&t._y===this._y&&t._z===this._z&&t._w===this._w}fromArray(t,e=0){return this._x=t[e],this._y=t[e+1],this._z=t[e+2],this._w=t[e+3],this._onChangeCallback(),this}toArray(t=[],e=0){return t[e]=this._x,t[e+1]=this._y,t[e+2]=this._z,t[e+3]=this._w,t}fromBufferAttribute(t,e){return this._x=t.getX(e),this._y=t.getY(e),this._z=t.getZ(e),this._w=t.getW(e),this._onChangeCallback(),this}toJSON(){return this.toArray()}_onChange(t){return this._onChangeCallback=t,this}_onChangeCallback(){}*[Symbol.iterator](){yield this._x,yield this._y,yield this._z,yield this._w}}class I{static{this.prototype.isVector3=!0}constructor(t=0,e=0,i=0){this.x=t,this.y=e,this.z=i}set(t,e,i){return i===void 0&&(i=this.z),this.x=t,this.y=e,this.z=i,this}setScalar(t){return this.x=t,this.y=t,this.z=t,this}setX(t){return this.x=t,this}setY(t){return this.y=t,this}setZ(t){return this.z=t,this}setComponent(t,e){switch(t){case 0:this.x=e;break;case 1:this.y=e;break;case 2:this.z=e;break;default:throw new Error("THREE.Vector3: index is out of range: "+t)}return this}getComponent(t){switch(t){case 0:return this.x;case 1:return this.y;case 2:return this.z;default:throw new Error("THREE.Vector3: index is out of range: "+t)}}clone(){return new this.constructor(this.x,this.y,this.z)}copy(t){return this.x=t.x,this.y=t.y,this.z=t.z,this}add(t){return this.x+=t.x,this.y+=t.y,this.z+=t.z,this}addScalar(t){return this.x+=t,this.y+=t,this.z+=t,this}addVectors(t,e){return this.x=t.x+e.x,this.y=t.y+e.y,this.z=t.z+e.z,this}addScaledVector(t,e){return this.x+=t.x*e,this.y+=t.y*e,this.z+=t.z*e,this}sub(t){return this.x-=t.x,this.y-=t.y,this.z-=t.z,this}subScalar(t){return this.x-=t,this.y-=t,this.z-=t,this}subVectors(t,e){return this.x=t.x-e.x,this.y=t.y-e.y,this.z=t.z-e.z,this}multiply(t){return this.x*=t.x,this.y*=t.y,this.z*=t.z,this}multiplyScalar(t){return this.x*=t,this.y*=t,this.z*=t,this}multiplyVectors(t,e){return this.x=t.x*e.x,this.y=t.y*e.y,this.z=t.z*e.z,this}applyEuler(t){return this.applyQuaternion(zc.setFromEuler(t))}applyAxisAngle(t,e){return this.applyQuaternion(zc.setFromAxisAngle(t,e))}applyMatrix3(t){const e=this.x,i=this.y,s=this.z,r=t.elements;return this.x=r[0]*e+r[3]*i+r[6]*s,this.y=r[1]*e+r[4]*i+r[7]*s,this.z=r[2]*e+r[5]*i+r[8]*s,this}applyNormalMatrix(t){return this.applyMatrix3(t).normalize()}applyMatrix4(t){const e=this.x,i=this.y,s=this.z,r=t.elements,a=1/(r[3]*e+r[7]*i+r[11]*s+r[15]);return this.x=(r[0]*e+r[4]*i+r[8]*s+r[12])*a,this.y=(r[1]*e+r[5]*i+r[9]*s+r[13])*a,this.z=(r[2]*e+r[6]*i+r[10]*s+r[14])*a,this}applyQuaternion(t){const e=this.x,i=this.y,s=this.z,r=t.x,a=t.y,o=t.z,l=t.w,c=2*(a*s-o*i),h=2*(o*e-r*s),d=2*(r*i-a*e);return this.x=e+l*c+a*d-o*h,this.y=i+l*h+o*c-r*d,this.z=s+l*d+r*h-a*c,this}project(t){return this.applyMatrix4(t.matrixWorldInverse).applyMatrix4(t.projectionMatrix)}unproject(t){return this.applyMatrix4(t.projectionMatrixInverse).applyMatrix4(t.matrixWorld)}transformDirection(t){const e=this.x,i=this.y,s=this.z,r=t.elements;return this.x=r[0]*e+r[4]*i+r[8]*s,this.y=r[1]*e+r[5]*i+r[9]*s,this.z=r[2]*e+r[6]*i+r[10]*s,this.normalize()}divide(t){return this.x/=t.x,this.y/=t.y,this.z/=t.z,this}divideScalar(t){return this.multiplyScalar(1/t)}min(t){return this.x=Math.min(this.x,t.x),this.y=Math.min(this.y,t.y),this.z=Math.min(this.z,t.z),this}max(t){return this.x=Math.max(this.x,t.x),this.y=Math.max(this.y,t.y),this.z=Math.max(this.z,t.z),this}clamp(t,e){return this.x=Ot(this.x,t.x,e.x),this.y=Ot(this.y,t.y,e.y),this.z=Ot(this.z,t.z,e.z),this}clampScalar(t,e){return this.x=Ot(this.x,t,e),this.y=Ot(this.y,t,e),this.z=Ot(this.z,t,e),this}clampLength(t,e){const i=this.length();return this.divideScalar(i||1).multiplyScalar(Ot(i,t,e))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this.z=Math.floor(this.z),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this.z=Math.ceil(this.z),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this.z=Math.round(this.z),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this.z=Math.trunc(this.z),this}negate(){return this.x=-this.x,this.y=-this.y,this.z=-this.z,this}dot(t){return this.x*t.x+this.y*t.y+this.z*t.z}lengthSq(){return this.x*this.x+this.y*this.y+this.z*this.z}length(){return Math.sqrt(this.x*this.x+this.y*this.y+this.z*this.z)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)+Math.abs(this.z)}normalize(){return this.divideScalar(this.length()||1)}setLength(t){return this.normalize().multiplyScalar(t)}lerp(t,e){return this.x+=(t.x-this.x)*e,this.y+=(t.y-this.y)*e,this.z+=(t.z-this.z)*e,this}lerpVectors(t,e,i){return this.x=t.x+(e.x-t.x)*i,this.y=t.y+(e.y-t.y)*i,this.z=t.z+(e.z-t.z)*i,this}cross(t){return this.crossVectors(this,t)}crossVectors(t,e){const i=t.x,s=t.y,r=t.z,a=e.x,o=e.y,l=e.z;return this.x=s*l-r*o,this.y=r*a-i*l,this.z=i*o-s*a,this}projectOnVector(t){const e=t.lengthSq();if(e===0)return this.set(0,0,0);const i=t.dot(this)/e;return this.copy(t).multiplyScalar(i)}projectOnPlane(t){return za.copy(this).projectOnVector(t),this.sub(za)}reflect(t){return this.sub(za.copy(t).multiplyScalar(2*this.dot(t)))}angleTo(t){const e=Math.sqrt(this.lengthSq()*t.lengthSq());if(e===0)return Math.PI/2;const i=this.dot(t)/e;return Math.acos(Ot(i,-1,1))}distanceTo(t){return Math.sqrt(this.distanceToSquared(t))}distanceToSquared(t){const e=this.x-t.x,i=this.y-t.y,s=this.z-t.z;return e*e+i*i+s*s}manhattanDistanceTo(t){return Math.abs(this.x-t.x)+Math.abs(this.y-t.y)+Math.abs(this.z-t.z)}setFromSpherical(t){return this.setFromSphericalCoords(t.radius,t.phi,t.theta)}setFromSphericalCoords(t,e,i){const s=Math.sin(e)*t;return this.x=s*Math.sin(i),this.y=Math.cos(e)*t,this.z=s*Math.cos(i),this}setFromCylindrical(t){return this.setFromCylindricalCoords(t.radius,t.theta,t.y)}setFromCylindricalCoords(t,e,i){return this.x=t*Math.sin(e),this.y=i,this.z=t*Math.cos(e),this}setFromMatrixPosition(t){const e=t.elements;return this.x=e[12],this.y=e[13],this.z=e[14],this}setFromMatrixScale(t){const e=this.setFromMatrixColumn(t,0).length(),i=this.setFromMatrixColumn(t,1).length(),s=this.setFromMatrixColumn(t,2).length();return this.x=e,this.y=i,this.z=s,this}setFromMatrixColumn(t,e){return this.fromArray(t.elements,e*4)}setFromMatrix3Column(t,e){return this.fromArray(t.elements,e*3)}setFromEuler(t){return this.x=t._x,this.y=t._y,this.z=t._z,this}setFromColor(t){return this.x=t.r,this.y=t.g,this.z=t.b,this}equals(t){return t.x===this.x&&t.y===this.y&&t.z===this.z}fromArray(t,e=0){return this.x=t[e],this.y=t[e+1],this.z=t[e+2],this}toArray(t=[],e=0){return t[e]=this.x,t[e+1]=this.y,t[e+2]=this.z,t}fromBufferAttribute(t,e){return this.x=t.getX(e),this.y=t.getY(e),this.z=t.getZ(e),this}random(){return this.x=Math.random(),this.y=Math.random(),this.z=Math.random(),this}randomDirection(){const t=Math.random()*Math.PI*2,e=Math.random()*2-1,i=Math.sqrt(1-e*e);return this.x=i*Math.cos(t),this.y=e,this.z=i*Math.sin(t),this}*[Symbol.iterator](){yield this.x,yield this.y,yield this.z}}const za=new I,zc=new Mi;class Ft{static{this.prototype.isMatrix3=!0}constructor(t,e,i,s,r,a,o,l,c){this.elements=[1,0,0,0,1,0,0,0,1],t!==void 0&&this.set(t,e,i,s,r,a,o,l,c)}set(t,e,i,s,r,a,o,l,c){const h=this.elements;return h[0]=t,h[1]=s,h[2]=o,h[3]=e,h[4]=r,h[5]=l,h[6]=i,h[7]=a,h[8]=c,this}identity(){return this.set(1,0,0,0,1,0,0,0,1),this}copy(t){const e=this.elements,i=t.elements;return e[0]=i[0],e[1]=i[1],e[2]=i[2],e[3]=i[3],e[4]=i[4],e[5]=i[5],e[6]=i[6],e[7]=i[7],e[8]=i[8],this}extractBasis(t,e,i){return t.setFromMatrix3Column(this,0),e.setFromMatrix3Column(this,1),i.setFromMatrix3Column(this,2),this}setFromMatrix4(t){const e=t.elements;return this.set(e[0],e[4],e[8],e[1],e[5],e[9],e[2],e[6],e[10]),this}multiply(t){return this.multiplyMatrices(this,t)}premultiply(t){return this.multiplyMatrices(t,this)}multiplyMatrices(t,e){const i=t.elements,s=e.elements,r=this.elements,a=i[0],o=i[3],l=i[6],c=i[1],h=i[4],d=i[7],u=i[2],f=i[5],g=i[8],S=s[0],m=s[3],p=s[6],x=s[1],y=s[4],v=s[7],M=s[2],A=s[5],_=s[8];return r[0]=a*S+o*x+l*M,r[3]=a*m+o*y+l*A,r[6]=a*p+o*v+l*_,r[1]=c*S+h*x+d*M,r[4]=c*m+h*y+d*A,r[7]=c*p+h*v+d*_,r[2]=u*S+f*x+g*M,r[5]=u*m+f*y+g*A,r[8]=u*p+f*v+g*_,this}multiplyScalar(t){const e=this.elements;return e[0]*=t,e[3]*=t,e[6]*=t,e[1]*=t,e[4]*=t,e[7]*=t,e[2]*=t,e[5]*=t,e[8]*=t,this}determinant(){const t=this.elements,e=t[0],i=t[1],s=t[2],r=t[3],a=t[4],o=t[5],l=t[6],c=t[7],h=t[8];return e*a*h-e*o*c-i*r*h+i*o*l+s*r*c-s*a*l}invert(){const t=this.elements,e=t[0],i=t[1],s=t[2],r=t[3],a=t[4],o=t[5],l=t[6],c=t[7],h=t[8],d=h*a-o*c,u=o*l-h*r,f=c*r-a*l,g=e*d+i*u+s*f;if(g===0)return this.set(0,0,0,0,0,0,0,0,0);const S=1/g;return t[0]=d*S,t[1]=(s*c-h*i)*S,t[2]=(o*i-s*a)*S,t[3]=u*S,t[4]=(h*e-s*l)*S,t[5]=(s*r-o*e)*S,t[6]=f*S,t[7]=(i*l-c*e)*S,t[8]=(a*e-i*r)*S,this}transpose(){let t;const e=this.elements;return t=e[1],e[1]=e[3],e[3]=t,t=e[2],e[2]=e[6],e[6]=t,t=e[5],e[5]=e[7],e[7]=t,this}getNormalMatrix(t){return this.setFromMatrix4(t).invert().transpose()}transposeIntoArray(t){const e=this.elements;return t[0]=e[0],t[1]=e[3],t[2]=e[6],t[3]=e[1],t[4]=e[4],t[5]=e[7],t[6]=e[2],t[7]=e[5],t[8]=e[8],this}setUvTransform(t,e,i,s,r,a,o){const l=Math.cos(r),c=Math.sin(r);return this.set(i*l,i*c,-i*(l*a+c*o)+a+t,-s*c,s*l,-s*(-c*a+l*o)+o+e,0,0,1),this}scale(t,e){return sa("Matrix3: .scale() is deprecated. Use .makeScale() instead."),this.premultiply(ka.makeScale(t,e)),this}rotate(t){return sa("Matrix3: .rotate() is deprecated. Use .makeRotation() instead."),this.premultiply(ka.makeRotation(-t)),this}translate(t,e){return sa("Matrix3: .translate() is deprecated. Use .makeTranslation() instead."),this.premultiply(ka.makeTranslation(t,e)),this}makeTranslation(t,e){return t.isVector2?this.set(1,0,t.x,0,1,t.y,0,0,1):this.set(1,0,t,0,1,e,0,0,1),this}makeRotation(t){const e=Math.cos(t),i=Math.sin(t);return this.set(e,-i,0,i,e,0,0,0,1),this}makeScale(t,e){return this.set(t,0,0,0,e,0,0,0,1),this}equals(t){const e=this.elements,i=t.elements;for(let s=0;s<9;s++)if(e[s]!==i[s])return!1;return!0}fromArray(t,e=0){for(let i=0;i<9;i++)this.elements[i]=t[i+e];return this}toArray(t=[],e=0){const i=this.elements;return t[e]=i[0],t[e+1]=i[1],t[e+2]=i[2],t[e+3]=i[3],t[e+4]=i[4],t[e+5]=i[5],t[e+6]=i[6],t[e+7]=i[7],t[e+8]=i[8],t}clone(){return new this.constructor().fromArray(this.elements)}}const ka=new Ft,kc=new Ft().set(.4123908,.3575843,.1804808,.212639,.7151687,.0721923,.0193308,.1191948,.9505322),Hc=new Ft().set(3.2409699,-1.5373832,-.4986108,-.9692436,1.8759675,.0415551,.0556301,-.203977,1.0569715);function jf(){const n={enabled:!0,workingColorSpace:jn,spaces:{},convert:function(s,r,a){return this.enabled===!1||r===a||!r||!a||(this.spaces[r].transfer===te&&(s.r=ei(s.r),s.g=ei(s.g),s.b=ei(s.b)),this.spaces[r].primaries!==this.spaces[a].primaries&&(s.applyMatrix3(this.spaces[r].toXYZ),s.applyMatrix3(this.spaces[a].fromXYZ)),this.spaces[a].transfer===te&&(s.r=ms(s.r),s.g=ms(s.g),s.b=ms(s.b))),s},workingToColorSpace:function(s,r){return this.convert(s,this.workingColorSpace,r)},colorSpaceToWorking:function(s,r){return this.convert(s,r,this.workingColorSpace)},getPrimaries:function(s){return this.spaces[s].primaries},getTransfer:function(s){return s===_i?ma:this.spaces[s].transfer},getToneMappingMode:function(s){return this.spaces[s].outputColorSpaceConfig.toneMappingMode||"standard"},getLuminanceCoefficients:function(s,r=this.workingColorSpace){return s.fromArray(this.spaces[r].luminanceCoefficients)},define:function(s){Object.assign(this.spaces,s)},_getMatrix:function(s,r,a){return s.copy(this.spaces[a].fromXYZ).multiply(this.spaces[r].toXYZ)},_getDrawingBufferColorSpace:function(s){return this.spaces[s].outputColorSpaceConfig.drawingBufferColorSpace},_getUnpackColorSpace:function(s=this.workingColorSpace){return this.spaces[s].workingColorSpaceConfig.unpackColorSpace}},t=[.64,.33,.3,.6,.15,.06],e=[.2126,.7152,.0722],i=[.3127,.329];return n.define({[jn]:{primaries:t,whitePoint:i,transfer:ma,toXYZ:kc,fromXYZ:Hc,luminanceCoefficients:e,workingColorSpaceConfig:{unpackColorSpace:xn},outputColorSpaceConfig:{drawingBufferColorSpace:xn}},[xn]:{primaries:t,whitePoint:i,transfer:te,toXYZ:kc,fromXYZ:Hc,luminanceCoefficients:e,outputColorSpaceConfig:{drawingBufferColorSpace:xn}}}),n}const qt=jf();function ei(n){return n<.04045?n*.0773993808:Math.pow(n*.9478672986+.0521327014,2.4)}function ms(n){return n<.0031308?n*12.92:1.055*Math.pow(n,.41666)-.055}let zi;class tp{static getDataURL(t,e="image/png"){if(/^data:/i.test(t.src)||typeof HTMLCanvasElement>"u")return t.src;let i;if(t instanceof HTMLCanvasElement)i=t;else{zi===void 0&&(zi=_a("canvas")),zi.width=t.width,zi.height=t.height;const s=zi.getContext("2d");t instanceof ImageData?s.putImageData(t,0,0):s.drawImage(t,0,0,t.width,t.height),i=zi}return i.toDataURL(e)}static sRGBToLinear(t){if(typeof HTMLImageElement<"u"&&t instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&t instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&t instanceof ImageBitmap){const e=_a("canvas");e.width=t.width,e.height=t.height;const i=e.getContext("2d");i.drawImage(t,0,0,t.width,t.height);const s=i.getImageData(0,0,t.width,t.height),r=s.data;for(let a=0;a<r.length;a++)r[a]=ei(r[a]/255)*255;return i.putImageData(s,0,0),e}else if(t.data){const e=t.data.slice(0);for(let i=0;i<e.length;i++)e instanceof Uint8Array||e instanceof Uint8ClampedArray?e[i]=Math.floor(ei(e[i]/255)*255):e[i]=ei(e[i]);return{data:e,width:t.width,height:t.height}}else return Lt("ImageUtils.sRGBToLinear(): Unsupported image type. No color space conversion applied."),t}}let ep=0;class Wl{constructor(t=null){this.isTextureSource=!0,Object.defineProperty(this,"id",{value:ep++}),this.uuid=Bi(),this.data=t,this.dataReady=!0,this.version=0}getSize(t){const e=this.data;return typeof HTMLVideoElement<"u"&&e instanceof HTMLVideoElement?t.set(e.videoWidth,e.videoHeight,0):typeof VideoFrame<"u"&&e instanceof VideoFrame?t.set(e.displayWidth,e.displayHeight,0):e!==null?t.set(e.width||0,e.height||0,e.depth||0):t.set(0,0,0),t}set needsUpdate(t){t===!0&&this.version++}toJSON(t){const e=t===void 0||typeof t=="string";if(!e&&t.images[this.uuid]!==void 0)return t.images[this.uuid];const i={uuid:this.uuid,url:""},s=this.data;if(s!==null){let r;if(Array.isArray(s)){r=[];for(let a=0,o=s.length;a<o;a++)s[a].isDataTexture?r.push(Ha(s[a].image)):r.push(Ha(s[a]))}else r=Ha(s);i.url=r}return e||(t.images[this.uuid]=i),i}}function Ha(n){return typeof HTMLImageElement<"u"&&n instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&n instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&n instanceof ImageBitmap?tp.getDataURL(n):n.data?{data:Array.from(n.data),width:n.width,height:n.height,type:n.data.constructor.name}:(Lt("Texture: Unable to serialize Texture."),{})}let np=0;const Ga=new I;class je extends Ei{constructor(t=je.DEFAULT_IMAGE,e=je.DEFAULT_MAPPING,i=Qn,s=Qn,r=$e,a=gi,o=zn,l=ln,c=je.DEFAULT_ANISOTROPY,h=_i){super(),this.isTexture=!0,Object.defineProperty(this,"id",{value:np++}),this.uuid=Bi(),this.name="",this.source=new Wl(t),this.mipmaps=[],this.mapping=e,this.channel=0,this.wrapS=i,this.wrapT=s,this.magFilter=r,this.minFilter=a,this.anisotropy=c,this.format=o,this.internalFormat=null,this.type=l,this.offset=new Rt(0,0),this.repeat=new Rt(1,1),this.center=new Rt(0,0),this.rotation=0,this.matrixAutoUpdate=!0,this.matrix=new Ft,this.generateMipmaps=!0,this.mipmapsAutoUpdate=!0,this.premultiplyAlpha=!1,this.flipY=!0,this.unpackAlignment=4,this.colorSpace=h,this.userData={},this.updateRanges=[],this.version=0,this.onUpdate=null,this.renderTarget=null,this.isRenderTargetTexture=!1,this.isArrayTexture=!!(t&&t.depth&&t.depth>1),this.pmremVersion=0,this.isPMREMTexture=!1,this.normalized=!1}get width(){return this.source.getSize(Ga).x}get height(){return this.source.getSize(Ga).y}get depth(){return this.source.getSize(Ga).z}get image(){return this.source.data}set image(t){this.source.data=t}updateMatrix(){this.matrix.setUvTransform(this.offset.x,this.offset.y,this.repeat.x,this.repeat.y,this.rotation,this.center.x,this.center.y)}addUpdateRange(t,e){this.updateRanges.push({start:t,count:e})}clearUpdateRanges(){this.updateRanges.length=0}clone(){return new this.constructor().copy(this)}copy(t){return this.name=t.name,this.source=t.source,this.mipmaps=t.mipmaps.slice(0),this.mapping=t.mapping,this.channel=t.channel,this.wrapS=t.wrapS,this.wrapT=t.wrapT,this.magFilter=t.magFilter,this.minFilter=t.minFilter,this.anisotropy=t.anisotropy,this.format=t.format,this.internalFormat=t.internalFormat,this.type=t.type,this.normalized=t.normalized,this.offset.copy(t.offset),this.repeat.copy(t.repeat),this.center.copy(t.center),this.rotation=t.rotation,this.matrixAutoUpdate=t.matrixAutoUpdate,this.matrix.copy(t.matrix),this.generateMipmaps=t.generateMipmaps,this.mipmapsAutoUpdate=t.mipmapsAutoUpdate,this.premultiplyAlpha=t.premultiplyAlpha,this.flipY=t.flipY,this.unpackAlignment=t.unpackAlignment,this.colorSpace=t.colorSpace,this.renderTarget=t.renderTarget,this.isRenderTargetTexture=t.isRenderTargetTexture,this.isPMREMTexture=t.isPMREMTexture,this.isArrayTexture=t.isArrayTexture,this.userData=JSON.parse(JSON.stringify(t.userData)),this.needsUpdate=!0,this}setValues(t){for(const e in t){const i=t[e];if(i===void 0){Lt(`Texture.setValues(): parameter '${e}' has value of undefined.`);continue}const s=this[e];if(s===void 0){Lt(`Texture.setValues(): property '${e}' does not exist.`);continue}s&&i&&s.isVector2&&i.isVector2||s&&i&&s.isVector3&&i.isVector3||s&&i&&s.isMatrix3&&i.isMatrix3?s.copy(i):this[e]=i}}toJSON(t){const e=t===void 0||typeof t=="string";if(!e&&t.textures[this.uuid]!==void 0)return t.textures[this.uuid];const i={metadata:{version:4.7,type:"Texture",generator:"Texture.toJSON"},uuid:this.uuid,name:this.name,image:this.source.toJSON(t).uuid,mapping:this.mapping,channel:this.channel,repeat:[this.repeat.x,this.repeat.y],offset:[this.offset.x,this.offset.y],center:[this.center.x,this.center.y],rotation:this.rotation,wrap:[this.wrapS,this.wrapT],format:this.format,internalFormat:this.internalFormat,type:this.type,normalized:this.normalized,colorSpace:this.colorSpace,minFilter:this.minFilter,magFilter:this.magFilter,anisotropy:this.anisotropy,flipY:this.flipY,generateMipmaps:this.generateMipmaps,mipmapsAutoUpdate:this.mipmapsAutoUpdate,premultiplyAlpha:this.premultiplyAlpha,unpackAlignment:this.unpackAlignment};return Object.keys(this.userData).length>0&&(i.userData=this.userData),e||(t.textures[this.uuid]=i),i}dispose(){this.dispatchEvent({type:"dispose"})}transformUv(t){if(this.mapping!==zh)return t;if(t.applyMatrix3(this.matrix),t.x<0||t.x>1)switch(this.wrapS){case Oo:t.x=t.x-Math.floor(t.x);break;case Qn:t.x=t.x<0?0:1;break;case Bo:Math.abs(Math.floor(t.x)%2)===1?t.x=Math.ceil(t.x)-t.x:t.x=t.x-Math.floor(t.x);break}if(t.y<0||t.y>1)switch(this.wrapT){case Oo:t.y=t.y-Math.floor(t.y);break;case Qn:t.y=t.y<0?0:1;break;case Bo:Math.abs(Math.floor(t.y)%2)===1?t.y=Math.ceil(t.y)-t.y:t.y=t.y-Math.floor(t.y);break}return this.flipY&&(t.y=1-t.y),t}set needsUpdate(t){t===!0&&(this.version++,this.source.needsUpdate=!0)}set needsPMREMUpdate(t){t===!0&&this.pmremVersion++}}je.DEFAULT_IMAGE=null;je.DEFAULT_MAPPING=zh;je.DEFAULT_ANISOTROPY=1;class fe{static{this.prototype.isVector4=!0}constructor(t=0,e=0,i=0,s=1){this.x=t,this.y=e,this.z=i,this.w=s}get width(){return this.z}set width(t){this.z=t}get height(){return this.w}set height(t){this.w=t}set(t,e,i,s){return this.x=t,this.y=e,this.z=i,this.w=s,this}setScalar(t){return this.x=t,this.y=t,this.z=t,this.w=t,this}setX(t){return this.x=t,this}setY(t){return this.y=t,this}setZ(t){return this.z=t,this}setW(t){return this.w=t,this}setComponent(t,e){switch(t){case 0:this.x=e;break;case 1:this.y=e;break;case 2:this.z=e;break;case 3:this.w=e;break;default:throw new Error("THREE.Vector4: index is out of range: "+t)}return this}getComponent(t){switch(t){case 0:return this.x;case 1:return this.y;case 2:return this.z;case 3:return this.w;default:throw new Error("THREE.Vector4: index is out of range: "+t)}}clone(){return new this.constructor(this.x,this.y,this.z,this.w)}copy(t){return this.x=t.x,this.y=t.y,this.z=t.z,this.w=t.w!==void 0?t.w:1,this}add(t){return this.x+=t.x,this.y+=t.y,this.z+=t.z,this.w+=t.w,this}addScalar(t){return this.x+=t,this.y+=t,this.z+=t,this.w+=t,this}addVectors(t,e){return this.x=t.x+e.x,this.y=t.y+e.y,this.z=t.z+e.z,this.w=t.w+e.w,this}addScaledVector(t,e){return this.x+=t.x*e,this.y+=t.y*e,this.z+=t.z*e,this.w+=t.w*e,this}sub(t){return this.x-=t.x,this.y-=t.y,this.z-=t.z,this.w-=t.w,this}subScalar(t){return this.x-=t,this.y-=t,this.z-=t,this.w-=t,this}subVectors(t,e){return this.x=t.x-e.x,this.y=t.y-e.y,this.z=t.z-e.z,this.w=t.w-e.w,this}multiply(t){return this.x*=t.x,this.y*=t.y,this.z*=t.z,this.w*=t.w,this}multiplyScalar(t){return this.x*=t,this.y*=t,this.z*=t,this.w*=t,this}applyMatrix4(t){const e=this.x,i=this.y,s=this.z,r=this.w,a=t.elements;return this.x=a[0]*e+a[4]*i+a[8]*s+a[12]*r,this.y=a[1]*e+a[5]*i+a[9]*s+a[13]*r,this.z=a[2]*e+a[6]*i+a[10]*s+a[14]*r,this.w=a[3]*e+a[7]*i+a[11]*s+a[15]*r,this}divide(t){return this.x/=t.x,this.y/=t.y,this.z/=t.z,this.w/=t.w,this}divideScalar(t){return this.multiplyScalar(1/t)}setAxisAngleFromQuaternion(t){this.w=2*Math.acos(t.w);const e=Math.sqrt(1-t.w*t.w);return e<1e-4?(this.x=1,this.y=0,this.z=0):(this.x=t.x/e,this.y=t.y/e,this.z=t.z/e),this}setAxisAngleFromRotationMatrix(t){let e,i,s,r;const l=t.elements,c=l[0],h=l[4],d=l[8],u=l[1],f=l[5],g=l[9],S=l[2],m=l[6],p=l[10];if(Math.abs(h-u)<.01&&Math.abs(d-S)<.01&&Math.abs(g-m)<.01){if(Math.abs(h+u)<.1&&Math.abs(d+S)<.1&&Math.abs(g+m)<.1&&Math.abs(c+f+p-3)<.1)return this.set(1,0,0,0),this;e=Math.PI;const y=(c+1)/2,v=(f+1)/2,M=(p+1)/2,A=(h+u)/4,_=(d+S)/4,E=(g+m)/4;return y>v&&y>M?y<.01?(i=0,s=.707106781,r=.707106781):(i=Math.sqrt(y),s=A/i,r=_/i):v>M?v<.01?(i=.707106781,s=0,r=.707106781):(s=Math.sqrt(v),i=A/s,r=E/s):M<.01?(i=.707106781,s=.707106781,r=0):(r=Math.sqrt(M),i=_/r,s=E/r),this.set(i,s,r,e),this}let x=Math.sqrt((m-g)*(m-g)+(d-S)*(d-S)+(u-h)*(u-h));return Math.abs(x)<.001&&(x=1),this.x=(m-g)/x,this.y=(d-S)/x,this.z=(u-h)/x,this.w=Math.acos((c+f+p-1)/2),this}setFromMatrixPosition(t){const e=t.elements;return this.x=e[12],this.y=e[13],this.z=e[14],this.w=e[15],this}min(t){return this.x=Math.min(this.x,t.x),this.y=Math.min(this.y,t.y),this.z=Math.min(this.z,t.z),this.w=Math.min(this.w,t.w),this}max(t){return this.x=Math.max(this.x,t.x),this.y=Math.max(this.y,t.y),this.z=Math.max(this.z,t.z),this.w=Math.max(this.w,t.w),this}clamp(t,e){return this.x=Ot(this.x,t.x,e.x),this.y=Ot(this.y,t.y,e.y),this.z=Ot(this.z,t.z,e.z),this.w=Ot(this.w,t.w,e.w),this}clampScalar(t,e){return this.x=Ot(this.x,t,e),this.y=Ot(this.y,t,e),this.z=Ot(this.z,t,e),this.w=Ot(this.w,t,e),this}clampLength(t,e){const i=this.length();return this.divideScalar(i||1).multiplyScalar(Ot(i,t,e))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this.z=Math.floor(this.z),this.w=Math.floor(this.w),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this.z=Math.ceil(this.z),this.w=Math.ceil(this.w),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this.z=Math.round(this.z),this.w=Math.round(this.w),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this.z=Math.trunc(this.z),this.w=Math.trunc(this.w),this}negate(){return this.x=-this.x,this.y=-this.y,this.z=-this.z,this.w=-this.w,this}dot(t){return this.x*t.x+this.y*t.y+this.z*t.z+this.w*t.w}lengthSq(){return this.x*this.x+this.y*this.y+this.z*this.z+this.w*this.w}length(){return Math.sqrt(this.x*this.x+this.y*this.y+this.z*this.z+this.w*this.w)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)+Math.abs(this.z)+Math.abs(this.w)}normalize(){return this.divideScalar(this.length()||1)}setLength(t){return this.normalize().multiplyScalar(t)}lerp(t,e){return this.x+=(t.x-this.x)*e,this.y+=(t.y-this.y)*e,this.z+=(t.z-this.z)*e,this.w+=(t.w-this.w)*e,this}lerpVectors(t,e,i){return this.x=t.x+(e.x-t.x)*i,this.y=t.y+(e.y-t.y)*i,this.z=t.z+(e.z-t.z)*i,this.w=t.w+(e.w-t.w)*i,this}equals(t){return t.x===this.x&&t.y===this.y&&t.z===this.z&&t.w===this.w}fromArray(t,e=0){return this.x=t[e],this.y=t[e+1],this.z=t[e+2],this.w=t[e+3],this}toArray(t=[],e=0){return t[e]=this.x,t[e+1]=this.y,t[e+2]=this.z,t[e+3]=this.w,t}fromBufferAttribute(t,e){return this.x=t.getX(e),this.y=t.getY(e),this.z=t.getZ(e),this.w=t.getW(e),this}random(){return this.x=Math.random(),this.y=Math.random(),this.z=Math.random(),this.w=Math.random(),this}*[Symbol.iterator](){yield this.x,yield this.y,yield this.z,yield this.w}}class ip extends Ei{constructor(t=1,e=1,i={}){super(),i=Object.assign({generateMipmaps:!1,internalFormat:null,minFilter:$e,depthBuffer:!0,stencilBuffer:!1,resolveColorBuffer:!0,resolveDepthBuffer:!0,resolveStencilBuffer:!0,storeMultisampledColorBuffer:!0,storeMultisampledDepthBuffer:!0,storeMultisampledStencilBuffer:!0,depthTexture:null,samples:0,count:1,depth:1,multiview:!1,useArrayDepthTexture:!1},i),this.isRenderTarget=!0,this.width=t,this.height=e,this.depth=i.depth,this.scissor=new fe(0,0,t,e),this.scissorTest=!1,this.viewport=new fe(0,0,t,e),this.textures=[];const s=i.count;for(let r=0;r<s;r++)this.textures[r]=new je({width:t,height:e,depth:i.depth}),this.textures[r].isRenderTargetTexture=!0,this.textures[r].renderTarget=this;this._setTextureOptions(i),this.depthBuffer=i.depthBuffer,this.stencilBuffer=i.stencilBuffer,this.resolveColorBuffer=i.resolveColorBuffer,this.resolveDepthBuffer=i.resolveDepthBuffer,this.resolveStencilBuffer=i.resolveStencilBuffer,this.storeMultisampledColorBuffer=i.storeMultisampledColorBuffer,this.storeMultisampledDepthBuffer=i.storeMultisampledDepthBuffer,this.storeMultisampledStencilBuffer=i.storeMultisampledStencilBuffer,this._depthTexture=null,this.depthTexture=i.depthTexture,this.samples=i.samples,this.multiview=i.multiview,this.useArrayDepthTexture=i.useArrayDepthTexture}_setTextureOptions(t={}){const e={minFilter:$e,generateMipmaps:!1,flipY:!1,internalFormat:null};t.mapping!==void 0&&(e.mapping=t.mapping),t.wrapS!==void 0&&(e.wrapS=t.wrapS),t.wrapT!==void 0&&(e.wrapT=t.wrapT),t.wrapR!==void 0&&(e.wrapR=t.wrapR),t.magFilter!==void 0&&(e.magFilter=t.magFilter),t.minFilter!==void 0&&(e.minFilter=t.minFilter),t.format!==void 0&&(e.format=t.format),t.type!==void 0&&(e.type=t.type),t.anisotropy!==void 0&&(e.anisotropy=t.anisotropy),t.colorSpace!==void 0&&(e.colorSpace=t.colorSpace),t.flipY!==void 0&&(e.flipY=t.flipY),t.generateMipmaps!==void 0&&(e.generateMipmaps=t.generateMipmaps),t.mipmapsAutoUpdate!==void 0&&(e.mipmapsAutoUpdate=t.mipmapsAutoUpdate),t.internalFormat!==void 0&&(e.internalFormat=t.internalFormat);for(let i=0;i<this.textures.length;i++)this.textures[i].setValues(e)}get texture(){return this.textures[0]}set texture(t){this.textures[0]=t}set depthTexture(t){this._depthTexture!==null&&this._depthTexture.renderTarget===this&&(this._depthTexture.renderTarget=null),t!==null&&t.renderTarget===null&&(t.renderTarget=this),this._depthTexture=t}get depthTexture(){return this._depthTexture}setSize(t,e,i=1){if(this.width!==t||this.height!==e||this.depth!==i){this.width=t,this.height=e,this.depth=i;for(let s=0,r=this.textures.length;s<r;s++)this.textures[s].image.width=t,this.textures[s].image.height=e,this.textures[s].image.depth=i,this.textures[s].isData3DTexture!==!0&&(this.textures[s].isArrayTexture=this.textures[s].image.depth>1);this.dispose()}this.viewport.set(0,0,t,e),this.scissor.set(0,0,t,e)}clone(){return new this.constructor().copy(this)}copy(t){this.width=t.width,this.height=t.height,this.depth=t.depth,this.scissor.copy(t.scissor),this.scissorTest=t.scissorTest,this.viewport.copy(t.viewport),this.textures.length=0;for(let e=0,i=t.textures.length;e<i;e++){this.textures[e]=t.textures[e].clone(),this.textures[e].isRenderTargetTexture=!0,this.textures[e].renderTarget=this;const s=Object.assign({},t.textures[e].image);this.textures[e].source=new Wl(s)}if(this.depthBuffer=t.depthBuffer,this.stencilBuffer=t.stencilBuffer,this.resolveColorBuffer=t.resolveColorBuffer,this.resolveDepthBuffer=t.resolveDepthBuffer,this.resolveStencilBuffer=t.resolveStencilBuffer,this.storeMultisampledColorBuffer=t.storeMultisampledColorBuffer,this.storeMultisampledDepthBuffer=t.storeMultisampledDepthBuffer,this.storeMultisampledStencilBuffer=t.storeMultisampledStencilBuffer,t.depthTexture!==null)if(t.depthTexture.renderTarget===t){const e=t.depthTexture.clone();e.renderTarget=null,this.depthTexture=e}else this.depthTexture=t.depthTexture;else this.depthTexture=null;return this.samples=t.samples,this.multiview=t.multiview,this.useArrayDepthTexture=t.useArrayDepthTexture,this}dispose(){this.dispatchEvent({type:"dispose"})}}class kn extends ip{constructor(t=1,e=1,i={}){super(t,e,i),this.isWebGLRenderTarget=!0}}class td extends je{constructor(t=null,e=1,i=1,s=1){super(null),this.isDataArrayTexture=!0,this.image={data:t,width:e,height:i,depth:s},this.magFilter=ke,this.minFilter=ke,this.wrapR=Qn,this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1,this.layerUpdates=new Set}copy(t){return super.copy(t),this.wrapR=t.wrapR,this}addLayerUpdate(t){this.layerUpdates.add(t)}clearLayerUpdates(){this.layerUpdates.clear()}}class sp extends je{constructor(t=null,e=1,i=1,s=1){super(null),this.isData3DTexture=!0,this.image={data:t,width:e,height:i,depth:s},this.magFilter=ke,this.minFilter=ke,this.wrapR=Qn,this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1}copy(t){return super.copy(t),this.wrapR=t.wrapR,this}}class $t{static{this.prototype.isMatrix4=!0}constructor(t,e,i,s,r,a,o,l,c,h,d,u,f,g,S,m){this.elements=[1,0,0,0,0,1,0,0,0,0,1,0,0,0,0,1],t!==void 0&&this.set(t,e,i,s,r,a,o,l,c,h,d,u,f,g,S,m)}set(t,e,i,s,r,a,o,l,c,h,d,u,f,g,S,m){const p=this.elements;return p[0]=t,p[4]=e,p[8]=i,p[12]=s,p[1]=r,p[5]=a,p[9]=o,p[13]=l,p[2]=c,p[6]=h,p[10]=d,p[14]=u,p[3]=f,p[7]=g,p[11]=S,p[15]=m,this}identity(){return this.set(1,0,0,0,0,1,0,0,0,0,1,0,0,0,0,1),this}clone(){return new $t().fromArray(this.elements)}copy(t){const e=this.elements,i=t.elements;return e[0]=i[0],e[1]=i[1],e[2]=i[2],e[3]=i[3],e[4]=i[4],e[5]=i[5],e[6]=i[6],e[7]=i[7],e[8]=i[8],e[9]=i[9],e[10]=i[10],e[11]=i[11],e[12]=i[12],e[13]=i[13],e[14]=i[14],e[15]=i[15],this}copyPosition(t){const e=this.elements,i=t.elements;return e[12]=i[12],e[13]=i[13],e[14]=i[14],this}setFromMatrix3(t){const e=t.elements;return this.set(e[0],e[3],e[6],0,e[1],e[4],e[7],0,e[2],e[5],e[8],0,0,0,0,1),this}extractBasis(t,e,i){return this.determinantAffine()===0?(t.set(1,0,0),e.set(0,1,0),i.set(0,0,1),this):(t.setFromMatrixColumn(this,0),e.setFromMatrixColumn(this,1),i.setFromMatrixColumn(this,2),this)}makeBasis(t,e,i){return this.set(t.x,e.x,i.x,0,t.y,e.y,i.y,0,t.z,e.z,i.z,0,0,0,0,1),this}extractRotation(t){if(t.determinantAffine()===0)return this.identity();const e=this.elements,i=t.elements,s=1/ki.setFromMatrixColumn(t,0).length(),r=1/ki.setFromMatrixColumn(t,1).length(),a=1/ki.setFromMatrixColumn(t,2).length();return e[0]=i[0]*s,e[1]=i[1]*s,e[2]=i[2]*s,e[3]=0,e[4]=i[4]*r,e[5]=i[5]*r,e[6]=i[6]*r,e[7]=0,e[8]=i[8]*a,e[9]=i[9]*a,e[10]=i[10]*a,e[11]=0,e[12]=0,e[13]=0,e[14]=0,e[15]=1,this}makeRotationFromEuler(t){const e=this.elements,i=t.x,s=t.y,r=t.z,a=Math.cos(i),o=Math.sin(i),l=Math.cos(s),c=Math.sin(s),h=Math.cos(r),d=Math.sin(r);if(t.order==="XYZ"){const u=a*h,f=a*d,g=o*h,S=o*d;e[0]=l*h,e[4]=-l*d,e[8]=c,e[1]=f+g*c,e[5]=u-S*c,e[9]=-o*l,e[2]=S-u*c,e[6]=g+f*c,e[10]=a*l}else if(t.order==="YXZ"){const u=l*h,f=l*d,g=c*h,S=c*d;e[0]=u+S*o,e[4]=g*o-f,e[8]=a*c,e[1]=a*d,e[5]=a*h,e[9]=-o,e[2]=f*o-g,e[6]=S+u*o,e[10]=a*l}else if(t.order==="ZXY"){const u=l*h,f=l*d,g=c*h,S=c*d;e[0]=u-S*o,e[4]=-a*d,e[8]=g+f*o,e[1]=f+g*o,e[5]=a*h,e[9]=S-u*o,e[2]=-a*c,e[6]=o,e[10]=a*l}else if(t.order==="ZYX"){const u=a*h,f=a*d,g=o*h,S=o*d;e[0]=l*h,e[4]=g*c-f,e[8]=u*c+S,e[1]=l*d,e[5]=S*c+u,e[9]=f*c-g,e[2]=-c,e[6]=o*l,e[10]=a*l}else if(t.order==="YZX"){const u=a*l,f=a*c,g=o*l,S=o*c;e[0]=l*h,e[4]=S-u*d,e[8]=g*d+f,e[1]=d,e[5]=a*h,e[9]=-o*h,e[2]=-c*h,e[6]=f*d+g,e[10]=u-S*d}else if(t.order==="XZY"){const u=a*l,f=a*c,g=o*l,S=o*c;e[0]=l*h,e[4]=-d,e[8]=c*h,e[1]=u*d+S,e[5]=a*h,e[9]=f*d-g,e[2]=g*d-f,e[6]=o*h,e[10]=S*d+u}return e[3]=0,e[7]=0,e[11]=0,e[12]=0,e[13]=0,e[14]=0,e[15]=1,this}makeRotationFromQuaternion(t){return this.compose(rp,t,ap)}lookAt(t,e,i){const s=this.elements;return an.subVectors(t,e),an.lengthSq()===0&&(an.z=1),an.normalize(),oi.crossVectors(i,an),oi.lengthSq()===0&&(Math.abs(i.z)===1?an.x+=1e-4:an.z+=1e-4,an.normalize(),oi.crossVectors(i,an)),oi.normalize(),rr.crossVectors(an,oi),s[0]=oi.x,s[4]=rr.x,s[8]=an.x,s[1]=oi.y,s[5]=rr.y,s[9]=an.y,s[2]=oi.z,s[6]=rr.z,s[10]=an.z,this}multiply(t){return this.multiplyMatrices(this,t)}premultiply(t){return this.multiplyMatrices(t,this)}multiplyMatrices(t,e){const i=t.elements,s=e.elements,r=this.elements,a=i[0],o=i[4],l=i[8],c=i[12],h=i[1],d=i[5],u=i[9],f=i[13],g=i[2],S=i[6],m=i[10],p=i[14],x=i[3],y=i[7],v=i[11],M=i[15],A=s[0],_=s[4],E=s[8],D=s[12],w=s[1],P=s[5],N=s[9],F=s[13],C=s[2],B=s[6],W=s[10],k=s[14],et=s[3],q=s[7],j=s[11],tt=s[15];return r[0]=a*A+o*w+l*C+c*et,r[4]=a*_+o*P+l*B+c*q,r[8]=a*E+o*N+l*W+c*j,r[12]=a*D+o*F+l*k+c*tt,r[1]=h*A+d*w+u*C+f*et,r[5]=h*_+d*P+u*B+f*q,r[9]=h*E+d*N+u*W+f*j,r[13]=h*D+d*F+u*k+f*tt,r[2]=g*A+S*w+m*C+p*et,r[6]=g*_+S*P+m*B+p*q,r[10]=g*E+S*N+m*W+p*j,r[14]=g*D+S*F+m*k+p*tt,r[3]=x*A+y*w+v*C+M*et,r[7]=x*_+y*P+v*B+M*q,r[11]=x*E+y*N+v*W+M*j,r[15]=x*D+y*F+v*k+M*tt,this}multiplyScalar(t){const e=this.elements;return e[0]*=t,e[4]*=t,e[8]*=t,e[12]*=t,e[1]*=t,e[5]*=t,e[9]*=t,e[13]*=t,e[2]*=t,e[6]*=t,e[10]*=t,e[14]*=t,e[3]*=t,e[7]*=t,e[11]*=t,e[15]*=t,this}determinant(){const t=this.elements,e=t[0],i=t[4],s=t[8],r=t[12],a=t[1],o=t[5],l=t[9],c=t[13],h=t[2],d=t[6],u=t[10],f=t[14],g=t[3],S=t[7],m=t[11],p=t[15],x=l*f-c*u,y=o*f-c*d,v=o*u-l*d,M=a*f-c*h,A=a*u-l*h,_=a*d-o*h;return e*(S*x-m*y+p*v)-i*(g*x-m*M+p*A)+s*(g*y-S*M+p*_)-r*(g*v-S*A+m*_)}determinantAffine(){const t=this.elements,e=t[0],i=t[4],s=t[8],r=t[1],a=t[5],o=t[9],l=t[2],c=t[6],h=t[10];return e*(a*h-o*c)-i*(r*h-o*l)+s*(r*c-a*l)}transpose(){const t=this.elements;let e;return e=t[1],t[1]=t[4],t[4]=e,e=t[2],t[2]=t[8],t[8]=e,e=t[6],t[6]=t[9],t[9]=e,e=t[3],t[3]=t[12],t[12]=e,e=t[7],t[7]=t[13],t[13]=e,e=t[11],t[11]=t[14],t[14]=e,this}setPosition(t,e,i){const s=this.elements;return t.isVector3?(s[12]=t.x,s[13]=t.y,s[14]=t.z):(s[12]=t,s[13]=e,s[14]=i),this}invert(){const t=this.elements,e=t[0],i=t[1],s=t[2],r=t[3],a=t[4],o=t[5],l=t[6],c=t[7],h=t[8],d=t[9],u=t[10],f=t[11],g=t[12],S=t[13],m=t[14],p=t[15],x=e*o-i*a,y=e*l-s*a,v=e*c-r*a,M=i*l-s*o,A=i*c-r*o,_=s*c-r*l,E=h*S-d*g,D=h*m-u*g,w=h*p-f*g,P=d*m-u*S,N=d*p-f*S,F=u*p-f*m,C=x*F-y*N+v*P+M*w-A*D+_*E;if(C===0)return this.set(0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0);const B=1/C;return t[0]=(o*F-l*N+c*P)*B,t[1]=(s*N-i*F-r*P)*B,t[2]=(S*_-m*A+p*M)*B,t[3]=(u*A-d*_-f*M)*B,t[4]=(l*w-a*F-c*D)*B,t[5]=(e*F-s*w+r*D)*B,t[6]=(m*v-g*_-p*y)*B,t[7]=(h*_-u*v+f*y)*B,t[8]=(a*N-o*w+c*E)*B,t[9]=(i*w-e*N-r*E)*B,t[10]=(g*A-S*v+p*x)*B,t[11]=(d*v-h*A-f*x)*B,t[12]=(o*D-a*P-l*E)*B,t[13]=(e*P-i*D+s*E)*B,t[14]=(S*y-g*M-m*x)*B,t[15]=(h*M-d*y+u*x)*B,this}scale(t){const e=this.elements,i=t.x,s=t.y,r=t.z;return e[0]*=i,e[4]*=s,e[8]*=r,e[1]*=i,e[5]*=s,e[9]*=r,e[2]*=i,e[6]*=s,e[10]*=r,e[3]*=i,e[7]*=s,e[11]*=r,this}getMaxScaleOnAxis(){const t=this.elements,e=t[0]*t[0]+t[1]*t[1]+t[2]*t[2],i=t[4]*t[4]+t[5]*t[5]+t[6]*t[6],s=t[8]*t[8]+t[9]*t[9]+t[10]*t[10];return Math.sqrt(Math.max(e,i,s))}makeTranslation(t,e,i){return t.isVector3?this.set(1,0,0,t.x,0,1,0,t.y,0,0,1,t.z,0,0,0,1):this.set(1,0,0,t,0,1,0,e,0,0,1,i,0,0,0,1),this}makeRotationX(t){const e=Math.cos(t),i=Math.sin(t);return this.set(1,0,0,0,0,e,-i,0,0,i,e,0,0,0,0,1),this}makeRotationY(t){const e=Math.cos(t),i=Math.sin(t);return this.set(e,0,i,0,0,1,0,0,-i,0,e,0,0,0,0,1),this}makeRotationZ(t){const e=Math.cos(t),i=Math.sin(t);return this.set(e,-i,0,0,i,e,0,0,0,0,1,0,0,0,0,1),this}makeRotationAxis(t,e){const i=Math.cos(e),s=Math.sin(e),r=1-i,a=t.x,o=t.y,l=t.z,c=r*a,h=r*o;return this.set(c*a+i,c*o-s*l,c*l+s*o,0,c*o+s*l,h*o+i,h*l-s*a,0,c*l-s*o,h*l+s*a,r*l*l+i,0,0,0,0,1),this}makeScale(t,e,i){return this.set(t,0,0,0,0,e,0,0,0,0,i,0,0,0,0,1),this}makeShear(t,e,i,s,r,a){return this.set(1,i,r,0,t,1,a,0,e,s,1,0,0,0,0,1),this}compose(t,e,i){const s=this.elements,r=e._x,a=e._y,o=e._z,l=e._w,c=r+r,h=a+a,d=o+o,u=r*c,f=r*h,g=r*d,S=a*h,m=a*d,p=o*d,x=l*c,y=l*h,v=l*d,M=i.x,A=i.y,_=i.z;return s[0]=(1-(S+p))*M,s[1]=(f+v)*M,s[2]=(g-y)*M,s[3]=0,s[4]=(f-v)*A,s[5]=(1-(u+p))*A,s[6]=(m+x)*A,s[7]=0,s[8]=(g+y)*_,s[9]=(m-x)*_,s[10]=(1-(u+S))*_,s[11]=0,s[12]=t.x,s[13]=t.y,s[14]=t.z,s[15]=1,this}decompose(t,e,i){const s=this.elements;t.x=s[12],t.y=s[13],t.z=s[14];const r=this.determinantAffine();if(r===0)return i.set(1,1,1),e.identity(),this;let a=ki.set(s[0],s[1],s[2]).length();const o=ki.set(s[4],s[5],s[6]).length(),l=ki.set(s[8],s[9],s[10]).length();r<0&&(a=-a),bn.copy(this);const c=1/a,h=1/o,d=1/l;return bn.elements[0]*=c,bn.elements[1]*=c,bn.elements[2]*=c,bn.elements[4]*=h,bn.elements[5]*=h,bn.elements[6]*=h,bn.elements[8]*=d,bn.elements[9]*=d,bn.elements[10]*=d,e.setFromRotationMatrix(bn),i.x=a,i.y=o,i.z=l,this}makePerspective(t,e,i,s,r,a,o=Pn,l=!1){const c=this.elements,h=2*r/(e-t),d=2*r/(i-s),u=(e+t)/(e-t),f=(i+s)/(i-s);let g,S;if(l)g=r/(a-r),S=a*r/(a-r);else if(o===Pn)g=-(a+r)/(a-r),S=-2*a*r/(a-r);else if(o===qs)g=-a/(a-r),S=-a*r/(a-r);else throw new Error("THREE.Matrix4.makePerspective(): Invalid coordinate system: "+o);return c[0]=h,c[4]=0,c[8]=u,c[12]=0,c[1]=0,c[5]=d,c[9]=f,c[13]=0,c[2]=0,c[6]=0,c[10]=g,c[14]=S,c[3]=0,c[7]=0,c[11]=-1,c[15]=0,this}makeOrthographic(t,e,i,s,r,a,o=Pn,l=!1){const c=this.elements,h=2/(e-t),d=2/(i-s),u=-(e+t)/(e-t),f=-(i+s)/(i-s);let g,S;if(l)g=1/(a-r),S=a/(a-r);else if(o===Pn)g=-2/(a-r),S=-(a+r)/(a-r);else if(o===qs)g=-1/(a-r),S=-r/(a-r);else throw new Error("THREE.Matrix4.makeOrthographic(): Invalid coordinate system: "+o);return c[0]=h,c[4]=0,c[8]=0,c[12]=u,c[1]=0,c[5]=d,c[9]=0,c[13]=f,c[2]=0,c[6]=0,c[10]=g,c[14]=S,c[3]=0,c[7]=0,c[11]=0,c[15]=1,this}equals(t){const e=this.elements,i=t.elements;for(let s=0;s<16;s++)if(e[s]!==i[s])return!1;return!0}fromArray(t,e=0){for(let i=0;i<16;i++)this.elements[i]=t[i+e];return this}toArray(t=[],e=0){const i=this.elements;return t[e]=i[0],t[e+1]=i[1],t[e+2]=i[2],t[e+3]=i[3],t[e+4]=i[4],t[e+5]=i[5],t[e+6]=i[6],t[e+7]=i[7],t[e+8]=i[8],t[e+9]=i[9],t[e+10]=i[10],t[e+11]=i[11],t[e+12]=i[12],t[e+13]=i[13],t[e+14]=i[14],t[e+15]=i[15],t}}const ki=new I,bn=new $t,rp=new I(0,0,0),ap=new I(1,1,1),oi=new I,rr=new I,an=new I,Gc=new $t,Vc=new Mi;class yi{constructor(t=0,e=0,i=0,s=yi.DEFAULT_ORDER){this.isEuler=!0,this._x=t,this._y=e,this._z=i,this._order=s}get x(){return this._x}set x(t){this._x=t,this._onChangeCallback()}get y(){return this._y}set y(t){this._y=t,this._onChangeCallback()}get z(){return this._z}set z(t){this._z=t,this._onChangeCallback()}get order(){return this._order}set order(t){this._order=t,this._onChangeCallback()}set(t,e,i,s=this._order){return this._x=t,this._y=e,this._z=i,this._order=s,this._onChangeCallback(),this}clone(){return new this.constructor(this._x,this._y,this._z,this._order)}copy(t){return this._x=t._x,this._y=t._y,this._z=t._z,this._order=t._order,this._onChangeCallback(),this}setFromRotationMatrix(t,e=this._order,i=!0){const s=t.elements,r=s[0],a=s[4],o=s[8],l=s[1],c=s[5],h=s[9],d=s[2],u=s[6],f=s[10];switch(e){case"XYZ":this._y=Math.asin(Ot(o,-1,1)),Math.abs(o)<.9999999?(this._x=Math.atan2(-h,f),this._z=Math.atan2(-a,r)):(this._x=Math.atan2(u,c),this._z=0);break;case"YXZ":this._x=Math.asin(-Ot(h,-1,1)),Math.abs(h)<.9999999?(this._y=Math.atan2(o,f),this._z=Math.atan2(l,c)):(this._y=Math.atan2(-d,r),this._z=0);break;case"ZXY":this._x=Math.asin(Ot(u,-1,1)),Math.abs(u)<.9999999?(this._y=Math.atan2(-d,f),this._z=Math.atan2(-a,c)):(this._y=0,this._z=Math.atan2(l,r));break;case"ZYX":this._y=Math.asin(-Ot(d,-1,1)),Math.abs(d)<.9999999?(this._x=Math.atan2(u,f),this._z=Math.atan2(l,r)):(this._x=0,this._z=Math.atan2(-a,c));break;case"YZX":this._z=Math.asin(Ot(l,-1,1)),Math.abs(l)<.9999999?(this._x=Math.atan2(-h,c),this._y=Math.atan2(-d,r)):(this._x=0,this._y=Math.atan2(o,f));break;case"XZY":this._z=Math.asin(-Ot(a,-1,1)),Math.abs(a)<.9999999?(this._x=Math.atan2(u,c),this._y=Math.atan2(o,r)):(this._x=Math.atan2(-h,f),this._y=0);break;default:Lt("Euler: .setFromRotationMatrix() encountered an unknown order: "+e)}return this._order=e,i===!0&&this._onChangeCallback(),this}setFromQuaternion(t,e,i){return Gc.makeRotationFromQuaternion(t),this.setFromRotationMatrix(Gc,e,i)}setFromVector3(t,e=this._order){return this.set(t.x,t.y,t.z,e)}reorder(t){return Vc.setFromEuler(this),this.setFromQuaternion(Vc,t)}equals(t){return t._x===this._x&&t._y===this._y&&t._z===this._z&&t._order===this._order}fromArray(t){return this._x=t[0],this._y=t[1],this._z=t[2],t[3]!==void 0&&(this._order=t[3]),this._onChangeCallback(),this}toArray(t=[],e=0){return t[e]=this._x,t[e+1]=this._y,t[e+2]=this._z,t[e+3]=this._order,t}_onChange(t){return this._onChangeCallback=t,this}_onChangeCallback(){}*[Symbol.iterator](){yield this._x,yield this._y,yield this._z,yield this._order}}yi.DEFAULT_ORDER="XYZ";class Xl{constructor(){this.mask=1}set(t){this.mask=(1<<t|0)>>>0}enable(t){this.mask|=1<<t|0}enableAll(){this.mask=-1}toggle(t){this.mask^=1<<t|0}disable(t){this.mask&=~(1<<t|0)}disableAll(){this.mask=0}test(t){return(this.mask&t.mask)!==0}isEnabled(t){return(this.mask&(1<<t|0))!==0}}let op=0;const Wc=new I,Hi=new Mi,Xn=new $t,ar=new I,Es=new I,lp=new I,cp=new Mi,Xc=new I(1,0,0),qc=new I(0,1,0),$c=new I(0,0,1),Yc={type:"added"},up={type:"removed"},Gi={type:"childadded",child:null},Va={type:"childremoved",child:null};class He extends Ei{constructor(){super(),this.isObject3D=!0,Object.defineProperty(this,"id",{value:op++}),this.uuid=Bi(),this.name="",this.type="Object3D",this.parent=null,this.children=[],this.up=He.DEFAULT_UP.clone();const t=new I,e=new yi,i=new Mi,s=new I(1,1,1);function r(){i.setFromEuler(e,!1)}function a(){e.setFromQuaternion(i,void 0,!1)}e._onChange(r),i._onChange(a),Object.defineProperties(this,{position:{configurable:!0,enumerable:!0,value:t},rotation:{configurable:!0,enumerable:!0,value:e},quaternion:{configurable:!0,enumerable:!0,value:i},scale:{configurable:!0,enumerable:!0,value:s},modelViewMatrix:{value:new $t},normalMatrix:{value:new Ft}}),this.matrix=new $t,this.matrixWorld=new $t,this.matrixAutoUpdate=He.DEFAULT_MATRIX_AUTO_UPDATE,this.matrixWorldAutoUpdate=He.DEFAULT_MATRIX_WORLD_AUTO_UPDATE,this.matrixWorldNeedsUpdate=!1,this.layers=new Xl,this.visible=!0,this.castShadow=!1,this.receiveShadow=!1,this.frustumCulled=!0,this.renderOrder=0,this.animations=[],this.customDepthMaterial=void 0,this.customDistanceMaterial=void 0,this.static=!1,this.userData={},this.pivot=null}onBeforeShadow(){}onAfterShadow(){}onBeforeRender(){}onAfterRender(){}applyMatrix4(t){this.matrixAutoUpdate&&this.updateMatrix(),this.matrix.premultiply(t),this.matrix.decompose(this.position,this.quaternion,this.scale),this.pivot!==null&&this.position.copy(this.pivot).applyMatrix4(this.matrix).sub(this.pivot)}applyQuaternion(t){return this.quaternion.premultiply(t),this}setRotationFromAxisAngle(t,e){this.quaternion.setFromAxisAngle(t,e)}setRotationFromEuler(t){this.quaternion.setFromEuler(t,!0)}setRotationFromMatrix(t){this.quaternion.setFromRotationMatrix(t)}setRotationFromQuaternion(t){this.quaternion.copy(t)}rotateOnAxis(t,e){return Hi.setFromAxisAngle(t,e),this.quaternion.multiply(Hi),this}rotateOnWorldAxis(t,e){return Hi.setFromAxisAngle(t,e),this.quaternion.premultiply(Hi),this}rotateX(t){return this.rotateOnAxis(Xc,t)}rotateY(t){return this.rotateOnAxis(qc,t)}rotateZ(t){return this.rotateOnAxis($c,t)}translateOnAxis(t,e){return Wc.copy(t).applyQuaternion(this.quaternion),this.position.add(Wc.multiplyScalar(e)),this}translateX(t){return this.translateOnAxis(Xc,t)}translateY(t){return this.translateOnAxis(qc,t)}translateZ(t){return this.translateOnAxis($c,t)}localToWorld(t){return this.updateWorldMatrix(!0,!1),t.applyMatrix4(this.matrixWorld)}worldToLocal(t){return this.updateWorldMatrix(!0,!1),t.applyMatrix4(Xn.copy(this.matrixWorld).invert())}lookAt(t,e,i){t.isVector3?ar.copy(t):ar.set(t,e,i);const s=this.parent;this.updateWorldMatrix(!0,!1),Es.setFromMatrixPosition(this.matrixWorld),this.isCamera||this.isLight?Xn.lookAt(Es,ar,this.up):Xn.lookAt(ar,Es,this.up),this.quaternion.setFromRotationMatrix(Xn),s&&(Xn.extractRotation(s.matrixWorld),Hi.setFromRotationMatrix(Xn),this.quaternion.premultiply(Hi.invert()))}add(t){if(arguments.length>1){for(let e=0;e<arguments.length;e++)this.add(arguments[e]);return this}return t===this?(Zt("Object3D.add: object can't be added as a child of itself.",t),this):(t&&t.isObject3D?(t.removeFromParent(),t.parent=this,this.children.push(t),t.dispatchEvent(Yc),Gi.child=t,this.dispatchEvent(Gi),Gi.child=null):Zt("Object3D.add: object not an instance of THREE.Object3D.",t),this)}remove(t){if(arguments.length>1){for(let i=0;i<arguments.length;i++)this.remove(arguments[i]);return this}const e=this.children.indexOf(t);return e!==-1&&(t.parent=null,this.children.splice(e,1),t.dispatchEvent(up),Va.child=t,this.dispatchEvent(Va),Va.child=null),this}removeFromParent(){const t=this.parent;return t!==null&&t.remove(this),this}clear(){return this.remove(...this.children)}attach(t){return this.updateWorldMatrix(!0,!1),Xn.copy(this.matrixWorld).invert(),t.parent!==null&&(t.parent.updateWorldMatrix(!0,!1),Xn.multiply(t.parent.matrixWorld)),t.applyMatrix4(Xn),t.removeFromParent(),t.parent=this,this.children.push(t),t.updateWorldMatrix(!1,!0),t.dispatchEvent(Yc),Gi.child=t,this.dispatchEvent(Gi),Gi.child=null,this}getObjectById(t){return this.getObjectByProperty("id",t)}getObjectByName(t){return this.getObjectByProperty("name",t)}getObjectByProperty(t,e){if(this[t]===e)return this;for(let i=0,s=this.children.length;i<s;i++){const a=this.children[i].getObjectByProperty(t,e);if(a!==void 0)return a}}getObjectsByProperty(t,e,i=[]){this[t]===e&&i.push(this);const s=this.children;for(let r=0,a=s.length;r<a;r++)s[r].getObjectsByProperty(t,e,i);return i}getWorldPosition(t){return this.updateWorldMatrix(!0,!1),t.setFromMatrixPosition(this.matrixWorld)}getWorldQuaternion(t){return this.updateWorldMatrix(!0,!1),this.matrixWorld.decompose(Es,t,lp),t}getWorldScale(t){return this.updateWorldMatrix(!0,!1),this.matrixWorld.decompose(Es,cp,t),t}getWorldDirection(t){this.updateWorldMatrix(!0,!1);const e=this.matrixWorld.elements;return t.set(e[8],e[9],e[10]).normalize()}raycast(){}intersectsFrustum(){return!0}traverse(t){t(this);const e=this.children;for(let i=0,s=e.length;i<s;i++)e[i].traverse(t)}traverseVisible(t){if(this.visible===!1)return;t(this);const e=this.children;for(let i=0,s=e.length;i<s;i++)e[i].traverseVisible(t)}traverseAncestors(t){const e=this.parent;e!==null&&(t(e),e.traverseAncestors(t))}updateMatrix(){this.matrix.compose(this.position,this.quaternion,this.scale);const t=this.pivot;if(t!==null){const e=t.x,i=t.y,s=t.z,r=this.matrix.elements;r[12]+=e-r[0]*e-r[4]*i-r[8]*s,r[13]+=i-r[1]*e-r[5]*i-r[9]*s,r[14]+=s-r[2]*e-r[6]*i-r[10]*s}this.matrixWorldNeedsUpdate=!0}updateMatrixWorld(t){this.matrixAutoUpdate&&this.updateMatrix(),(this.matrixWorldNeedsUpdate||t)&&(this.matrixWorldAutoUpdate===!0&&(this.parent===null?this.matrixWorld.copy(this.matrix):this.matrixWorld.multiplyMatrices(this.parent.matrixWorld,this.matrix)),this.matrixWorldNeedsUpdate=!1,t=!0);const e=this.children;for(let i=0,s=e.length;i<s;i++)e[i].updateMatrixWorld(t)}updateWorldMatrix(t,e,i=!1){const s=this.parent;if(t===!0&&s!==null&&s.updateWorldMatrix(!0,!1),this.matrixAutoUpdate&&this.updateMatrix(),(this.matrixWorldNeedsUpdate||i)&&(this.matrixWorldAutoUpdate===!0&&(this.parent===null?this.matrixWorld.copy(this.matrix):this.matrixWorld.multiplyMatrices(this.parent.matrixWorld,this.matrix)),this.matrixWorldNeedsUpdate=!1,i=!0),e===!0){const r=this.children;for(let a=0,o=r.length;a<o;a++)r[a].updateWorldMatrix(!1,!0,i)}}toJSON(t){const e=t===void 0||typeof t=="string",i={};e&&(t={geometries:{},materials:{},textures:{},images:{},shapes:{},skeletons:{},animations:{},nodes:{}},i.metadata={version:4.7,type:"Object",generator:"Object3D.toJSON"});const s={};s.uuid=this.uuid,s.type=this.type,s.name=this.name,s.castShadow=this.castShadow,s.receiveShadow=this.receiveShadow,s.visible=this.visible,s.frustumCulled=this.frustumCulled,s.renderOrder=this.renderOrder,s.static=this.static,s.matrixAutoUpdate=this.matrixAutoUpdate,Object.keys(this.userData).length>0&&(s.userData=this.userData),s.layers=this.layers.mask,s.matrix=this.matrix.toArray(),s.up=this.up.toArray(),this.pivot!==null&&(s.pivot=this.pivot.toArray()),this.morphTargetDictionary!==void 0&&(s.morphTargetDictionary=Object.assign({},this.morphTargetDictionary)),this.morphTargetInfluences!==void 0&&(s.morphTargetInfluences=this.morphTargetInfluences.slice()),this.isInstancedMesh&&(s.type="InstancedMesh",s.count=this.count,s.instanceMatrix=this.instanceMatrix.toJSON(),this.instanceColor!==null&&(s.instanceColor=this.instanceColor.toJSON())),this.isBatchedMesh&&(s.type="BatchedMesh",s.perObjectFrustumCulled=this.perObjectFrustumCulled,s.sortObjects=this.sortObjects,s.drawRanges=this._drawRanges,s.reservedRanges=this._reservedRanges,s.geometryInfo=this._geometryInfo.map(o=>({...o,boundingBox:o.boundingBox?o.boundingBox.toJSON():void 0,boundingSphere:o.boundingSphere?o.boundingSphere.toJSON():void 0})),s.instanceInfo=this._instanceInfo.map(o=>({...o})),s.availableInstanceIds=this._availableInstanceIds.slice(),s.availableGeometryIds=this._availableGeometryIds.slice(),s.nextIndexStart=this._nextIndexStart,s.nextVertexStart=this._nextVertexStart,s.geometryCount=this._geometryCount,s.maxInstanceCount=this._maxInstanceCount,s.maxVertexCount=this._maxVertexCount,s.maxIndexCount=this._maxIndexCount,s.geometryInitialized=this._geometryInitialized,s.matricesTexture=this._matricesTexture.toJSON(t),s.indirectTexture=this._indirectTexture.toJSON(t),this._colorsTexture!==null&&(s.colorsTexture=this._colorsTexture.toJSON(t)),this.boundingSphere!==null&&(s.boundingSphere=this.boundingSphere.toJSON()),this.boundingBox!==null&&(s.boundingBox=this.boundingBox.toJSON()));function r(o,l){return o[l.uuid]===void 0&&(o[l.uuid]=l.toJSON(t)),l.uuid}if(this.isScene)this.background&&(this.background.isColor?s.background=this.background.toJSON():this.background.isTexture&&(s.background=this.background.toJSON(t).uuid)),this.environment&&this.environment.isTexture&&this.environment.isRenderTargetTexture!==!0&&(s.environment=this.environment.toJSON(t).uuid);else if(this.isMesh||this.isLine||this.isPoints){s.geometry=r(t.geometries,this.geometry);const o=this.geometry.parameters;if(o!==void 0&&o.shapes!==void 0){const l=o.shapes;if(Array.isArray(l))for(let c=0,h=l.length;c<h;c++){const d=l[c];r(t.shapes,d)}else r(t.shapes,l)}}if(this.isSkinnedMesh&&(s.bindMode=this.bindMode,s.bindMatrix=this.bindMatrix.toArray(),this.skeleton!==void 0&&(r(t.skeletons,this.skeleton),s.skeleton=this.skeleton.uuid)),this.material!==void 0)if(Array.isArray(this.material)){const o=[];for(let l=0,c=this.material.length;l<c;l++)o.push(r(t.materials,this.material[l]));s.material=o}else s.material=r(t.materials,this.material);if(this.children.length>0){s.children=[];for(let o=0;o<this.children.length;o++)s.children.push(this.children[o].toJSON(t).object)}if(this.animations.length>0){s.animations=[];for(let o=0;o<this.animations.length;o++){const l=this.animations[o];s.animations.push(r(t.animations,l))}}if(e){const o=a(t.geometries),l=a(t.materials),c=a(t.textures),h=a(t.images),d=a(t.shapes),u=a(t.skeletons),f=a(t.animations),g=a(t.nodes);o.length>0&&(i.geometries=o),l.length>0&&(i.materials=l),c.length>0&&(i.textures=c),h.length>0&&(i.images=h),d.length>0&&(i.shapes=d),u.length>0&&(i.skeletons=u),f.length>0&&(i.animations=f),g.length>0&&(i.nodes=g)}return i.object=s,i;function a(o){const l=[];for(const c in o){const h=o[c];delete h.metadata,l.push(h)}return l}}clone(t){return new this.constructor().copy(this,t)}copy(t,e=!0){if(this.name=t.name,this.up.copy(t.up),this.position.copy(t.position),this.rotation.order=t.rotation.order,this.quaternion.copy(t.quaternion),this.scale.copy(t.scale),this.pivot=t.pivot!==null?t.pivot.clone():null,this.matrix.copy(t.matrix),this.matrixWorld.copy(t.matrixWorld),this.matrixAutoUpdate=t.matrixAutoUpdate,this.matrixWorldAutoUpdate=t.matrixWorldAutoUpdate,this.matrixWorldNeedsUpdate=t.matrixWorldNeedsUpdate,this.layers.mask=t.layers.mask,this.visible=t.visible,this.castShadow=t.castShadow,this.receiveShadow=t.receiveShadow,this.frustumCulled=t.frustumCulled,this.renderOrder=t.renderOrder,this.static=t.static,this.animations=t.animations.slice(),this.userData=JSON.parse(JSON.stringify(t.userData)),e===!0)for(let i=0;i<t.children.length;i++){const s=t.children[i];this.add(s.clone())}return this}dispose(){this.dispatchEvent({type:"dispose"})}}He.DEFAULT_UP=new I(0,1,0);He.DEFAULT_MATRIX_AUTO_UPDATE=!0;He.DEFAULT_MATRIX_WORLD_AUTO_UPDATE=!0;class Ii extends He{constructor(){super(),this.isGroup=!0,this.type="Group"}}const hp={type:"move"};class Wa{constructor(){this._targetRay=null,this._grip=null,this._hand=null}getHandSpace(){return this._hand===null&&(this._hand=new Ii,this._hand.matrixAutoUpdate=!1,this._hand.visible=!1,this._hand.joints={},this._hand.inputState={pinching:!1}),this._hand}getTargetRaySpace(){return this._targetRay===null&&(this._targetRay=new Ii,this._targetRay.matrixAutoUpdate=!1,this._targetRay.visible=!1,this._targetRay.hasLinearVelocity=!1,this._targetRay.linearVelocity=new I,this._targetRay.hasAngularVelocity=!1,this._targetRay.angularVelocity=new I),this._targetRay}getGripSpace(){return this._grip===null&&(this._grip=new Ii,this._grip.matrixAutoUpdate=!1,this._grip.visible=!1,this._grip.hasLinearVelocity=!1,this._grip.linearVelocity=new I,this._grip.hasAngularVelocity=!1,this._grip.angularVelocity=new I,this._grip.eventsEnabled=!1),this._grip}dispatchEvent(t){return this._targetRay!==null&&this._targetRay.dispatchEvent(t),this._grip!==null&&this._grip.dispatchEvent(t),this._hand!==null&&this._hand.dispatchEvent(t),this}connect(t){if(t&&t.hand){const e=this._hand;if(e)for(const i of t.hand.values())this._getHandJoint(e,i)}return this.dispatchEvent({type:"connected",data:t}),this}disconnect(t){return this.dispatchEvent({type:"disconnected",data:t}),this._targetRay!==null&&(this._targetRay.visible=!1),this._grip!==null&&(this._grip.visible=!1),this._hand!==null&&(this._hand.visible=!1),this}update(t,e,i){let s=null,r=null,a=null;const o=this._targetRay,l=this._grip,c=this._hand;if(t&&e.session.visibilityState!=="visible-blurred"){if(c&&t.hand){a=!0;for(const S of t.hand.values()){const m=e.getJointPose(S,i),p=this._getHandJoint(c,S);m!==null&&(p.matrix.fromArray(m.transform.matrix),p.matrix.decompose(p.position,p.quaternion,p.scale),p.matrixWorldNeedsUpdate=!0,p.jointRadius=m.radius),p.visible=m!==null}const h=c.joints["index-finger-tip"],d=c.joints["thumb-tip"],u=h.position.distanceTo(d.position),f=.02,g=.005;c.inputState.pinching&&u>f+g?(c.inputState.pinching=!1,this.dispatchEvent({type:"pinchend",handedness:t.handedness,target:this})):!c.inputState.pinching&&u<=f-g&&(c.inputState.pinching=!0,this.dispatchEvent({type:"pinchstart",handedness:t.handedness,target:this}))}else l!==null&&t.gripSpace&&(r=e.getPose(t.gripSpace,i),r!==null&&(l.matrix.fromArray(r.transform.matrix),l.matrix.decompose(l.position,l.quaternion,l.scale),l.matrixWorldNeedsUpdate=!0,r.linearVelocity?(l.hasLinearVelocity=!0,l.linearVelocity.copy(r.linearVelocity)):l.hasLinearVelocity=!1,r.angularVelocity?(l.hasAngularVelocity=!0,l.angularVelocity.copy(r.angularVelocity)):l.hasAngularVelocity=!1,l.eventsEnabled&&l.dispatchEvent({type:"gripUpdated",data:t,target:this})));o!==null&&(s=e.getPose(t.targetRaySpace,i),s===null&&r!==null&&(s=r),s!==null&&(o.matrix.fromArray(s.transform.matrix),o.matrix.decompose(o.position,o.quaternion,o.scale),o.matrixWorldNeedsUpdate=!0,s.linearVelocity?(o.hasLinearVelocity=!0,o.linearVelocity.copy(s.linearVelocity)):o.hasLinearVelocity=!1,s.angularVelocity?(o.hasAngularVelocity=!0,o.angularVelocity.copy(s.angularVelocity)):o.hasAngularVelocity=!1,this.dispatchEvent(hp)))}return o!==null&&(o.visible=s!==null),l!==null&&(l.visible=r!==null),c!==null&&(c.visible=a!==null),this}_getHandJoint(t,e){if(t.joints[e.jointName]===void 0){const i=new Ii;i.matrixAutoUpdate=!1,i.visible=!1,t.joints[e.jointName]=i,t.add(i)}return t.joints[e.jointName]}}const ed={aliceblue:15792383,antiquewhite:16444375,aqua:65535,aquamarine:8388564,azure:15794175,beige:16119260,bisque:16770244,black:0,blanchedalmond:16772045,blue:255,blueviolet:9055202,brown:10824234,burlywood:14596231,cadetblue:6266528,chartreuse:8388352,chocolate:13789470,coral:16744272,cornflowerblue:6591981,cornsilk:16775388,crimson:14423100,cyan:65535,darkblue:139,darkcyan:35723,darkgoldenrod:12092939,darkgray:11119017,darkgreen:25600,darkgrey:11119017,darkkhaki:12433259,darkmagenta:9109643,darkolivegreen:5597999,darkorange:16747520,darkorchid:10040012,darkred:9109504,darksalmon:15308410,darkseagreen:9419919,darkslateblue:4734347,darkslategray:3100495,darkslategrey:3100495,darkturquoise:52945,darkviolet:9699539,deeppink:16716947,deepskyblue:49151,dimgray:6908265,dimgrey:6908265,dodgerblue:2003199,firebrick:11674146,floralwhite:16775920,forestgreen:2263842,fuchsia:16711935,gainsboro:14474460,ghostwhite:16316671,gold:16766720,goldenrod:14329120,gray:8421504,green:32768,greenyellow:11403055,grey:8421504,honeydew:15794160,hotpink:16738740,indianred:13458524,indigo:4915330,ivory:16777200,khaki:15787660,lavender:15132410,lavenderblush:16773365,lawngreen:8190976,lemonchiffon:16775885,lightblue:11393254,lightcoral:15761536,lightcyan:14745599,lightgoldenrodyellow:16448210,lightgray:13882323,lightgreen:9498256,lightgrey:13882323,lightpink:16758465,lightsalmon:16752762,lightseagreen:2142890,lightskyblue:8900346,lightslategray:7833753,lightslategrey:7833753,lightsteelblue:11584734,lightyellow:16777184,lime:65280,limegreen:3329330,linen:16445670,magenta:16711935,maroon:8388608,mediumaquamarine:6737322,mediumblue:205,mediumorchid:12211667,mediumpurple:9662683,mediumseagreen:3978097,mediumslateblue:8087790,mediumspringgreen:64154,mediumturquoise:4772300,mediumvioletred:13047173,midnightblue:1644912,mintcream:16121850,mistyrose:16770273,moccasin:16770229,navajowhite:16768685,navy:128,oldlace:16643558,olive:8421376,olivedrab:7048739,orange:16753920,orangered:16729344,orchid:14315734,palegoldenrod:15657130,palegreen:10025880,paleturquoise:11529966,palevioletred:14381203,papayawhip:16773077,peachpuff:16767673,peru:13468991,pink:16761035,plum:14524637,powderblue:11591910,purple:8388736,rebeccapurple:6697881,red:16711680,rosybrown:12357519,royalblue:4286945,saddlebrown:9127187,salmon:16416882,sandybrown:16032864,seagreen:3050327,seashell:16774638,sienna:10506797,silver:12632256,skyblue:8900331,slateblue:6970061,slategray:7372944,slategrey:7372944,snow:16775930,springgreen:65407,steelblue:4620980,tan:13808780,teal:32896,thistle:14204888,tomato:16737095,turquoise:4251856,violet:15631086,wheat:16113331,white:16777215,whitesmoke:16119285,yellow:16776960,yellowgreen:10145074},li={h:0,s:0,l:0},or={h:0,s:0,l:0};function Xa(n,t,e){return e<0&&(e+=1),e>1&&(e-=1),e<1/6?n+(t-n)*6*e:e<1/2?t:e<2/3?n+(t-n)*6*(2/3-e):n}class Xt{constructor(t,e,i){return this.isColor=!0,this.r=1,this.g=1,this.b=1,this.set(t,e,i)}set(t,e,i){if(e===void 0&&i===void 0){const s=t;s&&s.isColor?this.copy(s):typeof s=="number"?this.setHex(s):typeof s=="string"&&this.setStyle(s)}else this.setRGB(t,e,i);return this}setScalar(t){return this.r=t,this.g=t,this.b=t,this}setHex(t,e=xn){return t=Math.floor(t),this.r=(t>>16&255)/255,this.g=(t>>8&255)/255,this.b=(t&255)/255,qt.colorSpaceToWorking(this,e),this}setRGB(t,e,i,s=qt.workingColorSpace){return this.r=t,this.g=e,this.b=i,qt.colorSpaceToWorking(this,s),this}setHSL(t,e,i,s=qt.workingColorSpace){if(t=Zf(t,1),e=Ot(e,0,1),i=Ot(i,0,1),e===0)this.r=this.g=this.b=i;else{const r=i<=.5?i*(1+e):i+e-i*e,a=2*i-r;this.r=Xa(a,r,t+1/3),this.g=Xa(a,r,t),this.b=Xa(a,r,t-1/3)}return qt.colorSpaceToWorking(this,s),this}setStyle(t,e=xn){function i(r){r!==void 0&&parseFloat(r)<1&&Lt("Color: Alpha component of "+t+" will be ignored.")}let s;if(s=/^(\w+)\(([^\)]*)\)/.exec(t)){let r;const a=s[1],o=s[2];switch(a){case"rgb":case"rgba":if(r=/^\s*(\d+)\s*,\s*(\d+)\s*,\s*(\d+)\s*(?:,\s*(\d+(?:\.\d+)?|\.\d+)\s*)?$/.exec(o))return i(r[4]),this.setRGB(Math.min(255,parseInt(r[1],10))/255,Math.min(255,parseInt(r[2],10))/255,Math.min(255,parseInt(r[3],10))/255,e);if(r=/^\s*(\d+(?:\.\d+)?|\.\d+)\%\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*(?:,\s*(\d+(?:\.\d+)?|\.\d+)\s*)?$/.exec(o))return i(r[4]),this.setRGB(Math.min(100,parseFloat(r[1]))/100,Math.min(100,parseFloat(r[2]))/100,Math.min(100,parseFloat(r[3]))/100,e);break;case"hsl":case"hsla":if(r=/^\s*([+-]?(?:\d+(?:\.\d+)?|\.\d+))\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*(?:,\s*(\d+(?:\.\d+)?|\.\d+)\s*)?$/.exec(o))return i(r[4]),this.setHSL(parseFloat(r[1])/360,parseFloat(r[2])/100,parseFloat(r[3])/100,e);break;default:Lt("Color: Unknown color model "+t)}}else if(s=/^\#([A-Fa-f\d]+)$/.exec(t)){const r=s[1],a=r.length;if(a===3)return this.setRGB(parseInt(r.charAt(0),16)/15,parseInt(r.charAt(1),16)/15,parseInt(r.charAt(2),16)/15,e);if(a===6)return this.setHex(parseInt(r,16),e);Lt("Color: Invalid hex color "+t)}else if(t&&t.length>0)return this.setColorName(t,e);return this}setColorName(t,e=xn){const i=ed[t.toLowerCase()];return i!==void 0?this.setHex(i,e):Lt("Color: Unknown color "+t),this}clone(){return new this.constructor(this.r,this.g,this.b)}copy(t){return this.r=t.r,this.g=t.g,this.b=t.b,this}copySRGBToLinear(t){return this.r=ei(t.r),this.g=ei(t.g),this.b=ei(t.b),this}copyLinearToSRGB(t){return this.r=ms(t.r),this.g=ms(t.g),this.b=ms(t.b),this}convertSRGBToLinear(){return this.copySRGBToLinear(this),this}convertLinearToSRGB(){return this.copyLinearToSRGB(this),this}getHex(t=xn){return qt.workingToColorSpace(Xe.copy(this),t),Math.round(Ot(Xe.r*255,0,255))*65536+Math.round(Ot(Xe.g*255,0,255))*256+Math.round(Ot(Xe.b*255,0,255))}getHexString(t=xn){return("000000"+this.getHex(t).toString(16)).slice(-6)}getHSL(t,e=qt.workingColorSpace){qt.workingToColorSpace(Xe.copy(this),e);const i=Xe.r,s=Xe.g,r=Xe.b,a=Math.max(i,s,r),o=Math.min(i,s,r);let l,c;const h=(o+a)/2;if(o===a)l=0,c=0;else{const d=a-o;switch(c=h<=.5?d/(a+o):d/(2-a-o),a){case i:l=(s-r)/d+(s<r?6:0);break;case s:l=(r-i)/d+2;break;case r:l=(i-s)/d+4;break}l/=6}return t.h=l,t.s=c,t.l=h,t}getRGB(t,e=qt.workingColorSpace){return qt.workingToColorSpace(Xe.copy(this),e),t.r=Xe.r,t.g=Xe.g,t.b=Xe.b,t}getStyle(t=xn){qt.workingToColorSpace(Xe.copy(this),t);const e=Xe.r,i=Xe.g,s=Xe.b;return t!==xn?`color(${t} ${e.toFixed(3)} ${i.toFixed(3)} ${s.toFixed(3)})`:`rgb(${Math.round(e*255)},${Math.round(i*255)},${Math.round(s*255)})`}offsetHSL(t,e,i){return this.getHSL(li),this.setHSL(li.h+t,li.s+e,li.l+i)}add(t){return this.r+=t.r,this.g+=t.g,this.b+=t.b,this}addColors(t,e){return this.r=t.r+e.r,this.g=t.g+e.g,this.b=t.b+e.b,this}addScalar(t){return this.r+=t,this.g+=t,this.b+=t,this}sub(t){return this.r=Math.max(0,this.r-t.r),this.g=Math.max(0,this.g-t.g),this.b=Math.max(0,this.b-t.b),this}multiply(t){return this.r*=t.r,this.g*=t.g,this.b*=t.b,this}multiplyScalar(t){return this.r*=t,this.g*=t,this.b*=t,this}lerp(t,e){return this.r+=(t.r-this.r)*e,this.g+=(t.g-this.g)*e,this.b+=(t.b-this.b)*e,this}lerpColors(t,e,i){return this.r=t.r+(e.r-t.r)*i,this.g=t.g+(e.g-t.g)*i,this.b=t.b+(e.b-t.b)*i,this}lerpHSL(t,e){this.getHSL(li),t.getHSL(or);const i=Ba(li.h,or.h,e),s=Ba(li.s,or.s,e),r=Ba(li.l,or.l,e);return this.setHSL(i,s,r),this}setFromVector3(t){return this.r=t.x,this.g=t.y,this.b=t.z,this}applyMatrix3(t){const e=this.r,i=this.g,s=this.b,r=t.elements;return this.r=r[0]*e+r[3]*i+r[6]*s,this.g=r[1]*e+r[4]*i+r[7]*s,this.b=r[2]*e+r[5]*i+r[8]*s,this}equals(t){return t.r===this.r&&t.g===this.g&&t.b===this.b}fromArray(t,e=0){return this.r=t[e],this.g=t[e+1],this.b=t[e+2],this}toArray(t=[],e=0){return t[e]=this.r,t[e+1]=this.g,t[e+2]=this.b,t}fromBufferAttribute(t,e){return this.r=t.getX(e),this.g=t.getY(e),this.b=t.getZ(e),this}toJSON(){return this.getHex()}*[Symbol.iterator](){yield this.r,yield this.g,yield this.b}}const Xe=new Xt;Xt.NAMES=ed;class dp extends He{constructor(){super(),this.isScene=!0,this.type="Scene",this.background=null,this.environment=null,this.fog=null,this.backgroundBlurriness=0,this.backgroundIntensity=1,this.backgroundRotation=new yi,this.environmentIntensity=1,this.environmentRotation=new yi,this.overrideMaterial=null,typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}copy(t,e){return super.copy(t,e),this.background=t.background!==null?t.background.clone():null,this.environment=t.environment!==null?t.environment.clone():null,this.fog=t.fog!==null?t.fog.clone():null,this.backgroundBlurriness=t.backgroundBlurriness,this.backgroundIntensity=t.backgroundIntensity,this.backgroundRotation.copy(t.backgroundRotation),this.environmentIntensity=t.environmentIntensity,this.environmentRotation.copy(t.environmentRotation),this.overrideMaterial=t.overrideMaterial!==null?t.overrideMaterial.clone():null,this.matrixAutoUpdate=t.matrixAutoUpdate,this}toJSON(t){const e=super.toJSON(t);return this.fog!==null&&(e.object.fog=this.fog.toJSON()),e.object.backgroundBlurriness=this.backgroundBlurriness,e.object.backgroundIntensity=this.backgroundIntensity,e.object.backgroundRotation=this.backgroundRotation.toArray(),e.object.environmentIntensity=this.environmentIntensity,e.object.environmentRotation=this.environmentRotation.toArray(),e}}const Tn=new I,qn=new I,qa=new I,$n=new I,Vi=new I,Wi=new I,Kc=new I,$a=new I,Ya=new I,Ka=new I,Za=new fe,Ja=new fe,Qa=new fe;class ze{constructor(t=new I,e=new I,i=new I){this.a=t,this.b=e,this.c=i}static getNormal(t,e,i,s){s.subVectors(i,e),Tn.subVectors(t,e),s.cross(Tn);const r=s.lengthSq();return r>0?s.multiplyScalar(1/Math.sqrt(r)):s.set(0,0,0)}static getBarycoord(t,e,i,s,r){Tn.subVectors(s,e),qn.subVectors(i,e),qa.subVectors(t,e);const a=Tn.dot(Tn),o=Tn.dot(qn),l=Tn.dot(qa),c=qn.dot(qn),h=qn.dot(qa),d=a*c-o*o;if(d===0)return r.set(0,0,0),null;const u=1/d,f=(c*l-o*h)*u,g=(a*h-o*l)*u;return r.set(1-f-g,g,f)}static containsPoint(t,e,i,s){return this.getBarycoord(t,e,i,s,$n)===null?!1:$n.x>=0&&$n.y>=0&&$n.x+$n.y<=1}static getInterpolation(t,e,i,s,r,a,o,l){return this.getBarycoord(t,e,i,s,$n)===null?(l.x=0,l.y=0,"z"in l&&(l.z=0),"w"in l&&(l.w=0),null):(l.setScalar(0),l.addScaledVector(r,$n.x),l.addScaledVector(a,$n.y),l.addScaledVector(o,$n.z),l)}static getInterpolatedAttribute(t,e,i,s,r,a){return Za.setScalar(0),Ja.setScalar(0),Qa.setScalar(0),Za.fromBufferAttribute(t,e),Ja.fromBufferAttribute(t,i),Qa.fromBufferAttribute(t,s),a.setScalar(0),a.addScaledVector(Za,r.x),a.addScaledVector(Ja,r.y),a.addScaledVector(Qa,r.z),a}static isFrontFacing(t,e,i,s){return Tn.subVectors(i,e),qn.subVectors(t,e),Tn.cross(qn).dot(s)<0}set(t,e,i){return this.a.copy(t),this.b.copy(e),this.c.copy(i),this}setFromPointsAndIndices(t,e,i,s){return this.a.copy(t[e]),this.b.copy(t[i]),this.c.copy(t[s]),this}setFromAttributeAndIndices(t,e,i,s){return this.a.fromBufferAttribute(t,e),this.b.fromBufferAttribute(t,i),this.c.fromBufferAttribute(t,s),this}clone(){return new this.constructor().copy(this)}copy(t){return this.a.copy(t.a),this.b.copy(t.b),this.c.copy(t.c),this}getArea(){return Tn.subVectors(this.c,this.b),qn.subVectors(this.a,this.b),Tn.cross(qn).length()*.5}getMidpoint(t){return t.addVectors(this.a,this.b).add(this.c).multiplyScalar(1/3)}getNormal(t){return ze.getNormal(this.a,this.b,this.c,t)}getPlane(t){return t.setFromCoplanarPoints(this.a,this.b,this.c)}getBarycoord(t,e){return ze.getBarycoord(t,this.a,this.b,this.c,e)}getInterpolation(t,e,i,s,r){return ze.getInterpolation(t,this.a,this.b,this.c,e,i,s,r)}containsPoint(t){return ze.containsPoint(t,this.a,this.b,this.c)}isFrontFacing(t){return ze.isFrontFacing(this.a,this.b,this.c,t)}intersectsBox(t){return t.intersectsTriangle(this)}closestPointToPoint(t,e){const i=this.a,s=this.b,r=this.c;let a,o;Vi.subVectors(s,i),Wi.subVectors(r,i),$a.subVectors(t,i);const l=Vi.dot($a),c=Wi.dot($a);if(l<=0&&c<=0)return e.copy(i);Ya.subVectors(t,s);const h=Vi.dot(Ya),d=Wi.dot(Ya);if(h>=0&&d<=h)return e.copy(s);const u=l*d-h*c;if(u<=0&&l>=0&&h<=0&&l-h>0)return a=l/(l-h),e.copy(i).addScaledVector(Vi,a);Ka.subVectors(t,r);const f=Vi.dot(Ka),g=Wi.dot(Ka);if(g>=0&&f<=g)return e.copy(r);const S=f*c-l*g;if(S<=0&&c>=0&&g<=0)return o=c/(c-g),e.copy(i).addScaledVector(Wi,o);const m=h*g-f*d;if(m<=0&&d-h>=0&&f-g>=0)return Kc.subVectors(r,s),o=(d-h)/(d-h+(f-g)),e.copy(s).addScaledVector(Kc,o);const p=1/(m+S+u);return a=S*p,o=u*p,e.copy(i).addScaledVector(Vi,a).addScaledVector(Wi,o)}equals(t){return t.a.equals(this.a)&&t.b.equals(this.b)&&t.c.equals(this.c)}}class tn{constructor(t=new I(1/0,1/0,1/0),e=new I(-1/0,-1/0,-1/0)){this.isBox3=!0,this.min=t,this.max=e}set(t,e){return this.min.copy(t),this.max.copy(e),this}setFromArray(t){this.makeEmpty();for(let e=0,i=t.length;e<i;e+=3)this.expandByPoint(wn.fromArray(t,e));return this}setFromBufferAttribute(t){this.makeEmpty();for(let e=0,i=t.count;e<i;e++)this.expandByPoint(wn.fromBufferAttribute(t,e));return this}setFromPoints(t){this.makeEmpty();for(let e=0,i=t.length;e<i;e++)this.expandByPoint(t[e]);return this}setFromCenterAndSize(t,e){const i=wn.copy(e).multiplyScalar(.5);return this.min.copy(t).sub(i),this.max.copy(t).add(i),this}setFromObject(t,e=!1){return this.makeEmpty(),this.expandByObject(t,e)}clone(){return new this.constructor().copy(this)}copy(t){return this.min.copy(t.min),this.max.copy(t.max),this}makeEmpty(){return this.min.x=this.min.y=this.min.z=1/0,this.max.x=this.max.y=this.max.z=-1/0,this}isEmpty(){return this.max.x<this.min.x||this.max.y<this.min.y||this.max.z<this.min.z}getCenter(t){return this.isEmpty()?t.set(0,0,0):t.addVectors(this.min,this.max).multiplyScalar(.5)}getSize(t){return this.isEmpty()?t.set(0,0,0):t.subVectors(this.max,this.min)}expandByPoint(t){return this.min.min(t),this.max.max(t),this}expandByVector(t){return this.min.sub(t),this.max.add(t),this}expandByScalar(t){return this.min.addScalar(-t),this.max.addScalar(t),this}expandByObject(t,e=!1){t.updateWorldMatrix(!1,!1);const i=t.geometry;if(i!==void 0){const r=i.getAttribute("position");if(e===!0&&r!==void 0&&t.isInstancedMesh!==!0&&t.isBatchedMesh!==!0)for(let a=0,o=r.count;a<o;a++)t.isMesh===!0?t.getVertexPosition(a,wn):wn.fromBufferAttribute(r,a),wn.applyMatrix4(t.matrixWorld),this.expandByPoint(wn);else t.boundingBox!==void 0?(t.boundingBox===null&&t.computeBoundingBox(),lr.copy(t.boundingBox)):(i.boundingBox===null&&i.computeBoundingBox(),lr.copy(i.boundingBox)),lr.applyMatrix4(t.matrixWorld),this.union(lr)}const s=t.children;for(let r=0,a=s.length;r<a;r++)this.expandByObject(s[r],e);return this}containsPoint(t){return t.x>=this.min.x&&t.x<=this.max.x&&t.y>=this.min.y&&t.y<=this.max.y&&t.z>=this.min.z&&t.z<=this.max.z}containsBox(t){return this.min.x<=t.min.x&&t.max.x<=this.max.x&&this.min.y<=t.min.y&&t.max.y<=this.max.y&&this.min.z<=t.min.z&&t.max.z<=this.max.z}getParameter(t,e){return e.set((t.x-this.min.x)/(this.max.x-this.min.x),(t.y-this.min.y)/(this.max.y-this.min.y),(t.z-this.min.z)/(this.max.z-this.min.z))}intersectsBox(t){return t.max.x>=this.min.x&&t.min.x<=this.max.x&&t.max.y>=this.min.y&&t.min.y<=this.max.y&&t.max.z>=this.min.z&&t.min.z<=this.max.z}intersectsSphere(t){return this.clampPoint(t.center,wn),wn.distanceToSquared(t.center)<=t.radius*t.radius}intersectsPlane(t){let e,i;return t.normal.x>0?(e=t.normal.x*this.min.x,i=t.normal.x*this.max.x):(e=t.normal.x*this.max.x,i=t.normal.x*this.min.x),t.normal.y>0?(e+=t.normal.y*this.min.y,i+=t.normal.y*this.max.y):(e+=t.normal.y*this.max.y,i+=t.normal.y*this.min.y),t.normal.z>0?(e+=t.normal.z*this.min.z,i+=t.normal.z*this.max.z):(e+=t.normal.z*this.max.z,i+=t.normal.z*this.min.z),e<=-t.constant&&i>=-t.constant}intersectsTriangle(t){if(this.isEmpty())return!1;this.getCenter(bs),cr.subVectors(this.max,bs),Xi.subVectors(t.a,bs),qi.subVectors(t.b,bs),$i.subVectors(t.c,bs),ci.subVectors(qi,Xi),ui.subVectors($i,qi),Ai.subVectors(Xi,$i);let e=[0,-ci.z,ci.y,0,-ui.z,ui.y,0,-Ai.z,Ai.y,ci.z,0,-ci.x,ui.z,0,-ui.x,Ai.z,0,-Ai.x,-ci.y,ci.x,0,-ui.y,ui.x,0,-Ai.y,Ai.x,0];return!ja(e,Xi,qi,$i,cr)||(e=[1,0,0,0,1,0,0,0,1],!ja(e,Xi,qi,$i,cr))?!1:(ur.crossVectors(ci,ui),e=[ur.x,ur.y,ur.z],ja(e,Xi,qi,$i,cr))}clampPoint(t,e){return e.copy(t).clamp(this.min,this.max)}distanceToPoint(t){return this.clampPoint(t,wn).distanceTo(t)}getBoundingSphere(t){return this.isEmpty()?t.makeEmpty():(this.getCenter(t.center),t.radius=this.getSize(wn).length()*.5),t}intersect(t){return this.min.max(t.min),this.max.min(t.max),this.isEmpty()&&this.makeEmpty(),this}union(t){return this.min.min(t.min),this.max.max(t.max),this}applyMatrix4(t){return this.isEmpty()?this:(Yn[0].set(this.min.x,this.min.y,this.min.z).applyMatrix4(t),Yn[1].set(this.min.x,this.min.y,this.max.z).applyMatrix4(t),Yn[2].set(this.min.x,this.max.y,this.min.z).applyMatrix4(t),Yn[3].set(this.min.x,this.max.y,this.max.z).applyMatrix4(t),Yn[4].set(this.max.x,this.min.y,this.min.z).applyMatrix4(t),Yn[5].set(this.max.x,this.min.y,this.max.z).applyMatrix4(t),Yn[6].set(this.max.x,this.max.y,this.min.z).applyMatrix4(t),Yn[7].set(this.max.x,this.max.y,this.max.z).applyMatrix4(t),this.setFromPoints(Yn),this)}translate(t){return this.min.add(t),this.max.add(t),this}equals(t){return t.min.equals(this.min)&&t.max.equals(this.max)}toJSON(){return{min:this.min.toArray(),max:this.max.toArray()}}fromJSON(t){return this.min.fromArray(t.min),this.max.fromArray(t.max),this}}const Yn=[new I,new I,new I,new I,new I,new I,new I,new I],wn=new I,lr=new tn,Xi=new I,qi=new I,$i=new I,ci=new I,ui=new I,Ai=new I,bs=new I,cr=new I,ur=new I,Ri=new I;function ja(n,t,e,i,s){for(let r=0,a=n.length-3;r<=a;r+=3){Ri.fromArray(n,r);const o=s.x*Math.abs(Ri.x)+s.y*Math.abs(Ri.y)+s.z*Math.abs(Ri.z),l=t.dot(Ri),c=e.dot(Ri),h=i.dot(Ri);if(Math.max(-Math.max(l,c,h),Math.min(l,c,h))>o)return!1}return!0}const ge=new I,hr=new Rt;let fp=0;class Ue extends Ei{constructor(t,e,i=!1){if(super(),Array.isArray(t))throw new TypeError("THREE.BufferAttribute: array should be a Typed Array.");this.isBufferAttribute=!0,Object.defineProperty(this,"id",{value:fp++}),this.name="",this.array=t,this.itemSize=e,this.count=t!==void 0?t.length/e:0,this.normalized=i,this.usage=Zh,this.updateRanges=[],this.gpuType=Bn,this.version=0,this._normalizationScale=t!==void 0?ba(t):void 0}onUploadCallback(){}set needsUpdate(t){t===!0&&this.version++}setUsage(t){return this.usage=t,this}addUpdateRange(t,e){this.updateRanges.push({start:t,count:e})}clearUpdateRanges(){this.updateRanges.length=0}copy(t){return this.name=t.name,this.array=new t.array.constructor(t.array),this.itemSize=t.itemSize,this.count=t.count,this.normalized=t.normalized,this.usage=t.usage,this.gpuType=t.gpuType,this._normalizationScale=t._normalizationScale,this}copyAt(t,e,i){t*=this.itemSize,i*=e.itemSize;for(let s=0,r=this.itemSize;s<r;s++)this.array[t+s]=e.array[i+s];return this}copyArray(t){return this.array.set(t),this}applyMatrix3(t){if(this.itemSize===2)for(let e=0,i=this.count;e<i;e++)hr.fromBufferAttribute(this,e),hr.applyMatrix3(t),this.setXY(e,hr.x,hr.y);else if(this.itemSize===3)for(let e=0,i=this.count;e<i;e++)ge.fromBufferAttribute(this,e),ge.applyMatrix3(t),this.setXYZ(e,ge.x,ge.y,ge.z);return this}applyMatrix4(t){for(let e=0,i=this.count;e<i;e++)ge.fromBufferAttribute(this,e),ge.applyMatrix4(t),this.setXYZ(e,ge.x,ge.y,ge.z);return this}applyNormalMatrix(t){for(let e=0,i=this.count;e<i;e++)ge.fromBufferAttribute(this,e),ge.applyNormalMatrix(t),this.setXYZ(e,ge.x,ge.y,ge.z);return this}transformDirection(t){for(let e=0,i=this.count;e<i;e++)ge.fromBufferAttribute(this,e),ge.transformDirection(t),this.setXYZ(e,ge.x,ge.y,ge.z);return this}set(t,e=0){return this.array.set(t,e),this}getComponent(t,e){let i=this.array[t*this.itemSize+e];return this.normalized&&(i=this._denormalize(i)),i}setComponent(t,e,i){return this.normalized&&(i=this._normalize(i)),this.array[t*this.itemSize+e]=i,this}getX(t){let e=this.array[t*this.itemSize];return this.normalized&&(e=this._denormalize(e)),e}setX(t,e){return this.normalized&&(e=this._normalize(e)),this.array[t*this.itemSize]=e,this}getY(t){let e=this.array[t*this.itemSize+1];return this.normalized&&(e=this._denormalize(e)),e}setY(t,e){return this.normalized&&(e=this._normalize(e)),this.array[t*this.itemSize+1]=e,this}getZ(t){let e=this.array[t*this.itemSize+2];return this.normalized&&(e=this._denormalize(e)),e}setZ(t,e){return this.normalized&&(e=this._normalize(e)),this.array[t*this.itemSize+2]=e,this}getW(t){let e=this.array[t*this.itemSize+3];return this.normalized&&(e=this._denormalize(e)),e}setW(t,e){return this.normalized&&(e=this._normalize(e)),this.array[t*this.itemSize+3]=e,this}setXY(t,e,i){return t*=this.itemSize,this.normalized&&(e=this._normalize(e),i=this._normalize(i)),this.array[t+0]=e,this.array[t+1]=i,this}setXYZ(t,e,i,s){return t*=this.itemSize,this.normalized&&(e=this._normalize(e),i=this._normalize(i),s=this._normalize(s)),this.array[t+0]=e,this.array[t+1]=i,this.array[t+2]=s,this}setXYZW(t,e,i,s,r){return t*=this.itemSize,this.normalized&&(e=this._normalize(e),i=this._normalize(i),s=this._normalize(s),r=this._normalize(r)),this.array[t+0]=e,this.array[t+1]=i,this.array[t+2]=s,this.array[t+3]=r,this}onUpload(t){return this.onUploadCallback=t,this}clone(){return new this.constructor(this.array,this.itemSize).copy(this)}toJSON(){const t={itemSize:this.itemSize,type:this.array.constructor.name,array:Array.from(this.array),normalized:this.normalized};return t.name=this.name,t.usage=this.usage,t.gpuType=this.gpuType,t}dispose(){this.dispatchEvent({type:"dispose"})}_denormalize(t){const e=this._normalizationScale;return e!==void 0?Math.max(t/e,-1):Qh(t,this.array)}_normalize(t){const e=this._normalizationScale;return e!==void 0?Math.round(t*e):jh(t,this.array)}}class nd extends Ue{constructor(t,e,i){super(new Uint16Array(t),e,i)}}class id extends Ue{constructor(t,e,i){super(new Uint32Array(t),e,i)}}class Fe extends Ue{constructor(t,e,i){super(new Float32Array(t),e,i)}}const pp=new tn,Ts=new I,to=new I;class Zs{constructor(t=new I,e=-1){this.isSphere=!0,this.center=t,this.radius=e}set(t,e){return this.center.copy(t),this.radius=e,this}setFromPoints(t,e){const i=this.center;e!==void 0?i.copy(e):pp.setFromPoints(t).getCenter(i);let s=0;for(let r=0,a=t.length;r<a;r++)s=Math.max(s,i.distanceToSquared(t[r]));return this.radius=Math.sqrt(s),this}copy(t){return this.center.copy(t.center),this.radius=t.radius,this}isEmpty(){return this.radius<0}makeEmpty(){return this.center.set(0,0,0),this.radius=-1,this}containsPoint(t){return t.distanceToSquared(this.center)<=this.radius*this.radius}distanceToPoint(t){return t.distanceTo(this.center)-this.radius}intersectsSphere(t){const e=this.radius+t.radius;return t.center.distanceToSquared(this.center)<=e*e}intersectsBox(t){return t.intersectsSphere(this)}intersectsPlane(t){return Math.abs(t.distanceToPoint(this.center))<=this.radius}clampPoint(t,e){const i=this.center.distanceToSquared(t);return e.copy(t),i>this.radius*this.radius&&(e.sub(this.center).normalize(),e.multiplyScalar(this.radius).add(this.center)),e}getBoundingBox(t){return this.isEmpty()?(t.makeEmpty(),t):(t.set(this.center,this.center),t.expandByScalar(this.radius),t)}applyMatrix4(t){return this.center.applyMatrix4(t),this.radius=this.radius*t.getMaxScaleOnAxis(),this}translate(t){return this.center.add(t),this}expandByPoint(t){if(this.isEmpty())return this.center.copy(t),this.radius=0,this;Ts.subVectors(t,this.center);const e=Ts.lengthSq();if(e>this.radius*this.radius){const i=Math.sqrt(e),s=(i-this.radius)*.5;this.center.addScaledVector(Ts,s/i),this.radius+=s}return this}union(t){return t.isEmpty()?this:this.isEmpty()?(this.copy(t),this):(this.center.equals(t.center)===!0?this.radius=Math.max(this.radius,t.radius):(to.subVectors(t.center,this.center).setLength(t.radius),this.expandByPoint(Ts.copy(t.center).add(to)),this.expandByPoint(Ts.copy(t.center).sub(to))),this)}equals(t){return t.center.equals(this.center)&&t.radius===this.radius}clone(){return new this.constructor().copy(this)}toJSON(){return{radius:this.radius,center:this.center.toArray()}}fromJSON(t){return this.radius=t.radius,this.center.fromArray(t.center),this}}let mp=0;const _n=new $t,eo=new He,Yi=new I,on=new tn,ws=new tn,De=new I;class hn extends Ei{constructor(){super(),this.isBufferGeometry=!0,Object.defineProperty(this,"id",{value:mp++}),this.uuid=Bi(),this.name="",this.type="BufferGeometry",this.index=null,this.indirect=null,this.indirectOffset=0,this.attributes={},this.morphAttributes={},this.morphTargetsRelative=!1,this.groups=[],this.boundingBox=null,this.boundingSphere=null,this.drawRange={start:0,count:1/0},this.userData={},this._transformed=!1}getIndex(){return this.index}setIndex(t){return Array.isArray(t)?this.index=new(qf(t)?id:nd)(t,1):this.index=t,this}setIndirect(t,e=0){return this.indirect=t,this.indirectOffset=e,this}getIndirect(){return this.indirect}getAttribute(t){return this.attributes[t]}setAttribute(t,e){return this.attributes[t]=e,this}deleteAttribute(t){return delete this.attributes[t],this}hasAttribute(t){return this.attributes[t]!==void 0}addGroup(t,e,i=0){this.groups.push({start:t,count:e,materialIndex:i})}clearGroups(){this.groups=[]}setDrawRange(t,e){this.drawRange.start=t,this.drawRange.count=e}applyMatrix4(t){const e=this.attributes.position;e!==void 0&&(e.applyMatrix4(t),e.needsUpdate=!0);const i=this.attributes.normal;if(i!==void 0){const r=new Ft().getNormalMatrix(t);i.applyNormalMatrix(r),i.needsUpdate=!0}const s=this.attributes.tangent;return s!==void 0&&(s.transformDirection(t),s.needsUpdate=!0),this.boundingBox!==null&&this.computeBoundingBox(),this.boundingSphere!==null&&this.computeBoundingSphere(),this._transformed=!0,this}applyQuaternion(t){return _n.makeRotationFromQuaternion(t),this.applyMatrix4(_n),this}rotateX(t){return _n.makeRotationX(t),this.applyMatrix4(_n),this}rotateY(t){return _n.makeRotationY(t),this.applyMatrix4(_n),this}rotateZ(t){return _n.makeRotationZ(t),this.applyMatrix4(_n),this}translate(t,e,i){return _n.makeTranslation(t,e,i),this.applyMatrix4(_n),this}scale(t,e,i){return _n.makeScale(t,e,i),this.applyMatrix4(_n),this}lookAt(t){return eo.lookAt(t),eo.updateMatrix(),this.applyMatrix4(eo.matrix),this}center(){return this.computeBoundingBox(),this.boundingBox.getCenter(Yi).negate(),this.translate(Yi.x,Yi.y,Yi.z),this}setFromPoints(t){const e=this.getAttribute("position");if(e===void 0){const i=[];for(let s=0,r=t.length;s<r;s++){const a=t[s];i.push(a.x,a.y,a.z||0)}this.setAttribute("position",new Fe(i,3))}else{const i=Math.min(t.length,e.count);for(let s=0;s<i;s++){const r=t[s];e.setXYZ(s,r.x,r.y,r.z||0)}t.length>e.count&&Lt("BufferGeometry: Buffer size too small for points data. Use .dispose() and create a new geometry."),e.needsUpdate=!0}return this}computeBoundingBox(){this.boundingBox===null&&(this.boundingBox=new tn);const t=this.attributes.position,e=this.morphAttributes.position;if(t&&t.isGLBufferAttribute){Zt("BufferGeometry.computeBoundingBox(): GLBufferAttribute requires a manual bounding box.",this),this.boundingBox.set(new I(-1/0,-1/0,-1/0),new I(1/0,1/0,1/0));return}if(t!==void 0){if(this.boundingBox.setFromBufferAttribute(t),e)for(let i=0,s=e.length;i<s;i++){const r=e[i];on.setFromBufferAttribute(r),this.morphTargetsRelative?(De.addVectors(this.boundingBox.min,on.min),this.boundingBox.expandByPoint(De),De.addVectors(this.boundingBox.max,on.max),this.boundingBox.expandByPoint(De)):(this.boundingBox.expandByPoint(on.min),this.boundingBox.expandByPoint(on.max))}}else this.boundingBox.makeEmpty();(isNaN(this.boundingBox.min.x)||isNaN(this.boundingBox.min.y)||isNaN(this.boundingBox.min.z))&&Zt('BufferGeometry.computeBoundingBox(): Computed min/max have NaN values. The "position" attribute is likely to have NaN values.',this)}computeBoundingSphere(){this.boundingSphere===null&&(this.boundingSphere=new Zs);const t=this.attributes.position,e=this.morphAttributes.position;if(t&&t.isGLBufferAttribute){Zt("BufferGeometry.computeBoundingSphere(): GLBufferAttribute requires a manual bounding sphere.",this),this.boundingSphere.set(new I,1/0);return}if(t){const i=this.boundingSphere.center;if(on.setFromBufferAttribute(t),e)for(let r=0,a=e.length;r<a;r++){const o=e[r];ws.setFromBufferAttribute(o),this.morphTargetsRelative?(De.addVectors(on.min,ws.min),on.expandByPoint(De),De.addVectors(on.max,ws.max),on.expandByPoint(De)):(on.expandByPoint(ws.min),on.expandByPoint(ws.max))}on.getCenter(i);let s=0;for(let r=0,a=t.count;r<a;r++)De.fromBufferAttribute(t,r),s=Math.max(s,i.distanceToSquared(De));if(e)for(let r=0,a=e.length;r<a;r++){const o=e[r],l=this.morphTargetsRelative;for(let c=0,h=o.count;c<h;c++)De.fromBufferAttribute(o,c),l&&(Yi.fromBufferAttribute(t,c),De.add(Yi)),s=Math.max(s,i.distanceToSquared(De))}this.boundingSphere.radius=Math.sqrt(s),isNaN(this.boundingSphere.radius)&&Zt('BufferGeometry.computeBoundingSphere(): Computed radius is NaN. The "position" attribute is likely to have NaN values.',this)}}computeTangents(){const t=this.index,e=this.attributes;if(t===null||e.position===void 0||e.normal===void 0||e.uv===void 0){Zt("BufferGeometry: .computeTangents() failed. Missing required attributes (index, position, normal or uv)");return}const i=e.position,s=e.normal,r=e.uv;let a=this.getAttribute("tangent");(a===void 0||a.count!==i.count)&&(a=new Ue(new Float32Array(4*i.count),4),this.setAttribute("tangent",a));const o=[],l=[],c=new Uint8Array(i.count);for(let D=0;D<i.count;D++)o[D]=new I,l[D]=new I;const h=new I,d=new I,u=new I,f=new Rt,g=new Rt,S=new Rt,m=new I,p=new I;function x(D,w,P){c[D]=c[w]=c[P]=1,h.fromBufferAttribute(i,D),d.fromBufferAttribute(i,w),u.fromBufferAttribute(i,P),f.fromBufferAttribute(r,D),g.fromBufferAttribute(r,w),S.fromBufferAttribute(r,P),d.sub(h),u.sub(h),g.sub(f),S.sub(f);const N=1/(g.x*S.y-S.x*g.y);isFinite(N)&&(m.copy(d).multiplyScalar(S.y).addScaledVector(u,-g.y).multiplyScalar(N),p.copy(u).multiplyScalar(g.x).addScaledVector(d,-S.x).multiplyScalar(N),o[D].add(m),o[w].add(m),o[P].add(m),l[D].add(p),l[w].add(p),l[P].add(p))}let y=this.groups;y.length===0&&(y=[{start:0,count:t.count}]);for(let D=0,w=y.length;D<w;++D){const P=y[D],N=P.start,F=P.count;for(let C=N,B=N+F;C<B;C+=3)x(t.getX(C+0),t.getX(C+1),t.getX(C+2))}const v=new I,M=new I,A=new I,_=new I;function E(D){A.fromBufferAttribute(s,D),_.copy(A);const w=o[D];v.copy(w),v.sub(A.multiplyScalar(A.dot(w))).normalize(),M.crossVectors(_,w);const N=M.dot(l[D])<0?-1:1;a.setXYZW(D,v.x,v.y,v.z,N)}for(let D=0,w=i.count;D<w;++D)c[D]&&E(D);this._transformed=!0}computeVertexNormals(){const t=this.index,e=this.getAttribute("position");if(e!==void 0){let i=this.getAttribute("normal");if(i===void 0||i.count!==e.count)i=new Ue(new Float32Array(e.count*3),3),this.setAttribute("normal",i);else for(let u=0,f=i.count;u<f;u++)i.setXYZ(u,0,0,0);const s=new I,r=new I,a=new I,o=new I,l=new I,c=new I,h=new I,d=new I;if(t)for(let u=0,f=t.count;u<f;u+=3){const g=t.getX(u+0),S=t.getX(u+1),m=t.getX(u+2);s.fromBufferAttribute(e,g),r.fromBufferAttribute(e,S),a.fromBufferAttribute(e,m),h.subVectors(a,r),d.subVectors(s,r),h.cross(d),o.fromBufferAttribute(i,g),l.fromBufferAttribute(i,S),c.fromBufferAttribute(i,m),o.add(h),l.add(h),c.add(h),i.setXYZ(g,o.x,o.y,o.z),i.setXYZ(S,l.x,l.y,l.z),i.setXYZ(m,c.x,c.y,c.z)}else for(let u=0,f=e.count;u<f;u+=3)s.fromBufferAttribute(e,u+0),r.fromBufferAttribute(e,u+1),a.fromBufferAttribute(e,u+2),h.subVectors(a,r),d.subVectors(s,r),h.cross(d),i.setXYZ(u+0,h.x,h.y,h.z),i.setXYZ(u+1,h.x,h.y,h.z),i.setXYZ(u+2,h.x,h.y,h.z);this.normalizeNormals(),i.needsUpdate=!0}}normalizeNormals(){const t=this.attributes.normal;for(let e=0,i=t.count;e<i;e++)De.fromBufferAttribute(t,e),De.normalize(),t.setXYZ(e,De.x,De.y,De.z)}toNonIndexed(){function t(o,l){const c=o.array,h=o.itemSize,d=o.normalized,u=new c.constructor(l.length*h);let f=0,g=0;for(let S=0,m=l.length;S<m;S++){o.isInterleavedBufferAttribute?f=l[S]*o.data.stride+o.offset:f=l[S]*h;for(let p=0;p<h;p++)u[g++]=c[f++]}return new Ue(u,h,d)}if(this.index===null)return Lt("BufferGeometry.toNonIndexed(): BufferGeometry is already non-indexed."),this;const e=new hn,i=this.index.array,s=this.attributes;for(const o in s){const l=s[o],c=t(l,i);e.setAttribute(o,c)}const r=this.morphAttributes;for(const o in r){const l=[],c=r[o];for(let h=0,d=c.length;h<d;h++){const u=c[h],f=t(u,i);l.push(f)}e.morphAttributes[o]=l}e.morphTargetsRelative=this.morphTargetsRelative;const a=this.groups;for(let o=0,l=a.length;o<l;o++){const c=a[o];e.addGroup(c.start,c.count,c.materialIndex)}return e}toJSON(){const t={metadata:{version:4.7,type:"BufferGeometry",generator:"BufferGeometry.toJSON"}};if(t.uuid=this.uuid,t.type=this.parameters!==void 0&&this._transformed===!0?"BufferGeometry":this.type,t.name=this.name,Object.keys(this.userData).length>0&&(t.userData=this.userData),this.parameters!==void 0&&this._transformed!==!0){const l=this.parameters;for(const c in l)l[c]!==void 0&&(t[c]=l[c]);return t}t.data={attributes:{}};const e=this.index;e!==null&&(t.data.index={type:e.array.constructor.name,array:Array.prototype.slice.call(e.array)});const i=this.attributes;for(const l in i){const c=i[l];t.data.attributes[l]=c.toJSON(t.data)}const s={};let r=!1;for(const l in this.morphAttributes){const c=this.morphAttributes[l],h=[];for(let d=0,u=c.length;d<u;d++){const f=c[d];h.push(f.toJSON(t.data))}h.length>0&&(s[l]=h,r=!0)}r&&(t.data.morphAttributes=s,t.data.morphTargetsRelative=this.morphTargetsRelative);const a=this.groups;a.length>0&&(t.data.groups=JSON.parse(JSON.stringify(a)));const o=this.boundingSphere;return o!==null&&(t.data.boundingSphere=o.toJSON()),t}clone(){return new this.constructor().copy(this)}copy(t){this.index=null,this.attributes={},this.morphAttributes={},this.groups=[],this.boundingBox=null,this.boundingSphere=null;const e={};this.name=t.name;const i=t.index;i!==null&&this.setIndex(i.clone());const s=t.attributes;for(const c in s){const h=s[c];this.setAttribute(c,h.clone(e))}const r=t.morphAttributes;for(const c in r){const h=[],d=r[c];for(let u=0,f=d.length;u<f;u++)h.push(d[u].clone(e));this.morphAttributes[c]=h}this.morphTargetsRelative=t.morphTargetsRelative;const a=t.groups;for(let c=0,h=a.length;c<h;c++){const d=a[c];this.addGroup(d.start,d.count,d.materialIndex)}const o=t.boundingBox;o!==null&&(this.boundingBox=o.clone());const l=t.boundingSphere;return l!==null&&(this.boundingSphere=l.clone()),this.drawRange.start=t.drawRange.start,this.drawRange.count=t.drawRange.count,this.userData=t.userData,this._transformed=t._transformed,this}dispose(){this.dispatchEvent({type:"dispose"})}}class _p{constructor(t,e){this.isInterleavedBuffer=!0,this.array=t,this.stride=e,this.count=t!==void 0?t.length/e:0,this.usage=Zh,this.updateRanges=[],this.version=0,this.uuid=Bi()}onUploadCallback(){}set needsUpdate(t){t===!0&&this.version++}setUsage(t){return this.usage=t,this}addUpdateRange(t,e){this.updateRanges.push({start:t,count:e})}clearUpdateRanges(){this.updateRanges.length=0}copy(t){return this.array=new t.array.constructor(t.array),this.count=t.count,this.stride=t.stride,this.usage=t.usage,this}copyAt(t,e,i){t*=this.stride,i*=e.stride;for(let s=0,r=this.stride;s<r;s++)this.array[t+s]=e.array[i+s];return this}set(t,e=0){return this.array.set(t,e),this}clone(t){t.arrayBuffers===void 0&&(t.arrayBuffers={});const e=Zc(this.array);t.arrayBuffers[e]===void 0&&(t.arrayBuffers[e]=this.array.slice(0).buffer);const i=new this.array.constructor(t.arrayBuffers[e]),s=new this.constructor(i,this.stride);return s.setUsage(this.usage),s}onUpload(t){return this.onUploadCallback=t,this}toJSON(t){t.arrayBuffers===void 0&&(t.arrayBuffers={});const e=Zc(this.array);t.arrayBuffers[e]===void 0&&(t.arrayBuffers[e]=Array.from(new Uint32Array(this.array.slice(0).buffer)));const i={uuid:this.uuid,buffer:e,type:this.array.constructor.name,stride:this.stride};return i.usage=this.usage,i}}function Zc(n){return n.buffer._uuid===void 0&&(n.buffer._uuid=Bi()),n.byteOffset===0&&n.byteLength===n.buffer.byteLength?n.buffer._uuid:n.buffer._uuid+":"+n.byteOffset+":"+n.byteLength}const Ze=new I;class ql{constructor(t,e,i,s=!1){this.isInterleavedBufferAttribute=!0,this.name="",this.data=t,this.itemSize=e,this.offset=i,this.normalized=s,this._normalizationScale=t!==void 0?ba(t.array):void 0}get count(){return this.data.count}get array(){return this.data.array}set needsUpdate(t){this.data.needsUpdate=t}applyMatrix4(t){for(let e=0,i=this.data.count;e<i;e++)Ze.fromBufferAttribute(this,e),Ze.applyMatrix4(t),this.setXYZ(e,Ze.x,Ze.y,Ze.z);return this}applyNormalMatrix(t){for(let e=0,i=this.count;e<i;e++)Ze.fromBufferAttribute(this,e),Ze.applyNormalMatrix(t),this.setXYZ(e,Ze.x,Ze.y,Ze.z);return this}transformDirection(t){for(let e=0,i=this.count;e<i;e++)Ze.fromBufferAttribute(this,e),Ze.transformDirection(t),this.setXYZ(e,Ze.x,Ze.y,Ze.z);return this}getComponent(t,e){let i=this.array[t*this.data.stride+this.offset+e];return this.normalized&&(i=this._denormalize(i)),i}setComponent(t,e,i){return this.normalized&&(i=this._normalize(i)),this.data.array[t*this.data.stride+this.offset+e]=i,this}setX(t,e){return this.normalized&&(e=this._normalize(e)),this.data.array[t*this.data.stride+this.offset]=e,this}setY(t,e){return this.normalized&&(e=this._normalize(e)),this.data.array[t*this.data.stride+this.offset+1]=e,this}setZ(t,e){return this.normalized&&(e=this._normalize(e)),this.data.array[t*this.data.stride+this.offset+2]=e,this}setW(t,e){return this.normalized&&(e=this._normalize(e)),this.data.array[t*this.data.stride+this.offset+3]=e,this}getX(t){let e=this.data.array[t*this.data.stride+this.offset];return this.normalized&&(e=this._denormalize(e)),e}getY(t){let e=this.data.array[t*this.data.stride+this.offset+1];return this.normalized&&(e=this._denormalize(e)),e}getZ(t){let e=this.data.array[t*this.data.stride+this.offset+2];return this.normalized&&(e=this._denormalize(e)),e}getW(t){let e=this.data.array[t*this.data.stride+this.offset+3];return this.normalized&&(e=this._denormalize(e)),e}setXY(t,e,i){return t=t*this.data.stride+this.offset,this.normalized&&(e=this._normalize(e),i=this._normalize(i)),this.data.array[t+0]=e,this.data.array[t+1]=i,this}setXYZ(t,e,i,s){return t=t*this.data.stride+this.offset,this.normalized&&(e=this._normalize(e),i=this._normalize(i),s=this._normalize(s)),this.data.array[t+0]=e,this.data.array[t+1]=i,this.data.array[t+2]=s,this}setXYZW(t,e,i,s,r){return t=t*this.data.stride+this.offset,this.normalized&&(e=this._normalize(e),i=this._normalize(i),s=this._normalize(s),r=this._normalize(r)),this.data.array[t+0]=e,this.data.array[t+1]=i,this.data.array[t+2]=s,this.data.array[t+3]=r,this}clone(t){if(t===void 0){ga("InterleavedBufferAttribute.clone(): Cloning an interleaved buffer attribute will de-interleave buffer data.");const e=[];for(let i=0;i<this.count;i++){const s=i*this.data.stride+this.offset;for(let r=0;r<this.itemSize;r++)e.push(this.data.array[s+r])}return new Ue(new this.array.constructor(e),this.itemSize,this.normalized)}else return t.interleavedBuffers===void 0&&(t.interleavedBuffers={}),t.interleavedBuffers[this.data.uuid]===void 0&&(t.interleavedBuffers[this.data.uuid]=this.data.clone(t)),new ql(t.interleavedBuffers[this.data.uuid],this.itemSize,this.offset,this.normalized)}toJSON(t){if(t===void 0){ga("InterleavedBufferAttribute.toJSON(): Serializing an interleaved buffer attribute will de-interleave buffer data.");const e=[];for(let i=0;i<this.count;i++){const s=i*this.data.stride+this.offset;for(let r=0;r<this.itemSize;r++)e.push(this.data.array[s+r])}return{itemSize:this.itemSize,type:this.array.constructor.name,array:e,normalized:this.normalized}}else return t.interleavedBuffers===void 0&&(t.interleavedBuffers={}),t.interleavedBuffers[this.data.uuid]===void 0&&(t.interleavedBuffers[this.data.uuid]=this.data.toJSON(t)),{isInterleavedBufferAttribute:!0,itemSize:this.itemSize,data:this.data.uuid,offset:this.offset,normalized:this.normalized}}_denormalize(t){const e=this._normalizationScale;return e!==void 0?Math.max(t/e,-1):Qh(t,this.data.array)}_normalize(t){const e=this._normalizationScale;return e!==void 0?Math.round(t*e):jh(t,this.data.array)}}const no=new I,gp=new I,xp=new Ft;class vn{constructor(t=new I(1,0,0),e=0){this.isPlane=!0,this.normal=t,this.constant=e}set(t,e){return this.normal.copy(t),this.constant=e,this}setComponents(t,e,i,s){return this.normal.set(t,e,i),this.constant=s,this}setFromNormalAndCoplanarPoint(t,e){return this.normal.copy(t),this.constant=-e.dot(this.normal),this}setFromCoplanarPoints(t,e,i){const s=no.subVectors(i,e).cross(gp.subVectors(t,e)).normalize();return this.setFromNormalAndCoplanarPoint(s,t),this}copy(t){return this.normal.copy(t.normal),this.constant=t.constant,this}normalize(){const t=1/this.normal.length();return this.normal.multiplyScalar(t),this.constant*=t,this}negate(){return this.constant*=-1,this.normal.negate(),this}distanceToPoint(t){return this.normal.dot(t)+this.constant}distanceToSphere(t){return this.distanceToPoint(t.center)-t.radius}projectPoint(t,e){return e.copy(t).addScaledVector(this.normal,-this.distanceToPoint(t))}intersectLine(t,e,i=!0){const s=t.delta(no),r=this.normal.dot(s);if(r===0)return this.distanceToPoint(t.start)===0?e.copy(t.start):null;const a=-(t.start.dot(this.normal)+this.constant)/r;return i===!0&&(a<0||a>1)?null:e.copy(t.start).addScaledVector(s,a)}intersectsLine(t){const e=this.distanceToPoint(t.start),i=this.distanceToPoint(t.end);return e<0&&i>0||i<0&&e>0}intersectsBox(t){return t.intersectsPlane(this)}intersectsSphere(t){return t.intersectsPlane(this)}coplanarPoint(t){return t.copy(this.normal).multiplyScalar(-this.constant)}applyMatrix4(t,e){const i=e||xp.getNormalMatrix(t),s=this.coplanarPoint(no).applyMatrix4(t),r=this.normal.applyMatrix3(i).normalize();return this.constant=-s.dot(r),this}translate(t){return this.constant-=t.dot(this.normal),this}equals(t){return t.normal.equals(this.normal)&&t.constant===this.constant}clone(){return new this.constructor().copy(this)}toJSON(){return{normal:this.normal.toArray(),constant:this.constant}}fromJSON(t){return this.normal.fromArray(t.normal),this.constant=t.constant,this}}let vp=0;class Ss extends Ei{constructor(){super(),this.isMaterial=!0,Object.defineProperty(this,"id",{value:vp++}),this.uuid=Bi(),this.name="",this.type="Material",this.blending=Bs,this.side=ni,this.vertexColors=!1,this.opacity=1,this.transparent=!1,this.alphaHash=!1,this.blendSrc=Ph,this.blendDst=Lh,this.blendEquation=cs,this.blendSrcAlpha=null,this.blendDstAlpha=null,this.blendEquationAlpha=null,this.blendColor=new Xt(0,0,0),this.blendAlpha=0,this.depthFunc=Vs,this.depthTest=!0,this.depthWrite=!0,this.stencilWriteMask=255,this.stencilFunc=kf,this.stencilRef=0,this.stencilFuncMask=255,this.stencilFail=Oa,this.stencilZFail=Oa,this.stencilZPass=Oa,this.stencilWrite=!1,this.clippingPlanes=null,this.clipIntersection=!1,this.clipShadows=!1,this.shadowSide=null,this.colorWrite=!0,this.precision=null,this.polygonOffset=!1,this.polygonOffsetFactor=0,this.polygonOffsetUnits=0,this.dithering=!1,this.alphaToCoverage=!1,this.premultipliedAlpha=!1,this.forceSinglePass=!1,this.allowOverride=!0,this.visible=!0,this.toneMapped=!0,this.userData={},this.version=0,this._alphaTest=0}get alphaTest(){return this._alphaTest}set alphaTest(t){this._alphaTest>0!=t>0&&this.version++,this._alphaTest=t}onBeforeRender(){}onBeforeCompile(){}customProgramCacheKey(){return this.onBeforeCompile.toString()}setValues(t){if(t!==void 0)for(const e in t){const i=t[e];if(i===void 0){Lt(`Material: parameter '${e}' has value of undefined.`);continue}const s=this[e];if(s===void 0){Lt(`Material: '${e}' is not a property of THREE.${this.type}.`);continue}s&&s.isColor?s.set(i):s&&s.isVector2&&i&&i.isVector2||s&&s.isEuler&&i&&i.isEuler||s&&s.isVector3&&i&&i.isVector3?s.copy(i):this[e]=i}}toJSON(t){const e=t===void 0||typeof t=="string";e&&(t={textures:{},images:{}});const i={metadata:{version:4.7,type:"Material",generator:"Material.toJSON"}};i.uuid=this.uuid,i.type=this.type,i.blending=this.blending,i.side=this.side,i.shadowSide=this.shadowSide,i.vertexColors=this.vertexColors,i.opacity=this.opacity,i.transparent=this.transparent,i.blendSrc=this.blendSrc,i.blendDst=this.blendDst,i.blendEquation=this.blendEquation,i.blendSrcAlpha=this.blendSrcAlpha,i.blendDstAlpha=this.blendDstAlpha,i.blendEquationAlpha=this.blendEquationAlpha,i.blendColor=this.blendColor.getHex(),i.blendAlpha=this.blendAlpha,i.depthFunc=this.depthFunc,i.depthTest=this.depthTest,i.depthWrite=this.depthWrite,i.colorWrite=this.colorWrite,i.clipIntersection=this.clipIntersection,i.clipShadows=this.clipShadows,i.stencilWriteMask=this.stencilWriteMask,i.stencilFunc=this.stencilFunc,i.stencilRef=this.stencilRef,i.stencilFuncMask=this.stencilFuncMask,i.stencilFail=this.stencilFail,i.stencilZFail=this.stencilZFail,i.stencilZPass=this.stencilZPass,i.stencilWrite=this.stencilWrite,i.polygonOffset=this.polygonOffset,i.polygonOffsetFactor=this.polygonOffsetFactor,i.polygonOffsetUnits=this.polygonOffsetUnits,i.dithering=this.dithering,i.alphaTest=this.alphaTest,i.alphaHash=this.alphaHash,i.alphaToCoverage=this.alphaToCoverage,i.premultipliedAlpha=this.premultipliedAlpha,i.forceSinglePass=this.forceSinglePass,i.allowOverride=this.allowOverride,i.visible=this.visible,i.toneMapped=this.toneMapped,i.name=this.name,this.color&&this.color.isColor&&(i.color=this.color.getHex()),this.roughness!==void 0&&(i.roughness=this.roughness),this.metalness!==void 0&&(i.metalness=this.metalness),this.sheen!==void 0&&(i.sheen=this.sheen),this.sheenColor&&this.sheenColor.isColor&&(i.sheenColor=this.sheenColor.getHex()),this.sheenRoughness!==void 0&&(i.sheenRoughness=this.sheenRoughness),this.emissive&&this.emissive.isColor&&(i.emissive=this.emissive.getHex()),this.emissiveIntensity!==void 0&&(i.emissiveIntensity=this.emissiveIntensity),this.specular&&this.specular.isColor&&(i.specular=this.specular.getHex()),this.specularIntensity!==void 0&&(i.specularIntensity=this.specularIntensity),this.specularColor&&this.specularColor.isColor&&(i.specularColor=this.specularColor.getHex()),this.shininess!==void 0&&(i.shininess=this.shininess),this.clearcoat!==void 0&&(i.clearcoat=this.clearcoat),this.clearcoatRoughness!==void 0&&(i.clearcoatRoughness=this.clearcoatRoughness),this.diffuseRoughness!==void 0&&(i.diffuseRoughness=this.diffuseRoughness),this.diffuseRoughnessMap&&this.diffuseRoughnessMap.isTexture&&(i.diffuseRoughnessMap=this.diffuseRoughnessMap.toJSON(t).uuid),this.clearcoatMap&&this.clearcoatMap.isTexture&&(i.clearcoatMap=this.clearcoatMap.toJSON(t).uuid),this.clearcoatRoughnessMap&&this.clearcoatRoughnessMap.isTexture&&(i.clearcoatRoughnessMap=this.clearcoatRoughnessMap.toJSON(t).uuid),this.clearcoatNormalMap&&this.clearcoatNormalMap.isTexture&&(i.clearcoatNormalMap=this.clearcoatNormalMap.toJSON(t).uuid,i.clearcoatNormalScale=this.clearcoatNormalScale.toArray()),this.sheenColorMap&&this.sheenColorMap.isTexture&&(i.sheenColorMap=this.sheenColorMap.toJSON(t).uuid),this.sheenRoughnessMap&&this.sheenRoughnessMap.isTexture&&(i.sheenRoughnessMap=this.sheenRoughnessMap.toJSON(t).uuid),this.dispersion!==void 0&&(i.dispersion=this.dispersion),this.retroreflectivity!==void 0&&(i.retroreflectivity=this.retroreflectivity),this.iridescence!==void 0&&(i.iridescence=this.iridescence),this.iridescenceIOR!==void 0&&(i.iridescenceIOR=this.iridescenceIOR),this.iridescenceThicknessMinimum!==void 0&&(i.iridescenceThicknessMinimum=this.iridescenceThicknessMinimum),this.iridescenceThicknessMaximum!==void 0&&(i.iridescenceThicknessMaximum=this.iridescenceThicknessMaximum),this.iridescenceMap&&this.iridescenceMap.isTexture&&(i.iridescenceMap=this.iridescenceMap.toJSON(t).uuid),this.iridescenceThicknessMap&&this.iridescenceThicknessMap.isTexture&&(i.iridescenceThicknessMap=this.iridescenceThicknessMap.toJSON(t).uuid),this.anisotropy!==void 0&&(i.anisotropy=this.anisotropy),this.anisotropyRotation!==void 0&&(i.anisotropyRotation=this.anisotropyRotation),this.anisotropyMap&&this.anisotropyMap.isTexture&&(i.anisotropyMap=this.anisotropyMap.toJSON(t).uuid),this.map&&this.map.isTexture&&(i.map=this.map.toJSON(t).uuid),this.matcap&&this.matcap.isTexture&&(i.matcap=this.matcap.toJSON(t).uuid),this.alphaMap&&this.alphaMap.isTexture&&(i.alphaMap=this.alphaMap.toJSON(t).uuid),this.lightMap&&this.lightMap.isTexture&&(i.lightMap=this.lightMap.toJSON(t).uuid,i.lightMapIntensity=this.lightMapIntensity),this.aoMap&&this.aoMap.isTexture&&(i.aoMap=this.aoMap.toJSON(t).uuid,i.aoMapIntensity=this.aoMapIntensity),this.bumpMap&&this.bumpMap.isTexture&&(i.bumpMap=this.bumpMap.toJSON(t).uuid,i.bumpScale=this.bumpScale),this.normalMap&&this.normalMap.isTexture&&(i.normalMap=this.normalMap.toJSON(t).uuid,i.normalMapType=this.normalMapType,i.normalScale=this.normalScale.toArray()),this.displacementMap&&this.displacementMap.isTexture&&(i.displacementMap=this.displacementMap.toJSON(t).uuid,i.displacementScale=this.displacementScale,i.displacementBias=this.displacementBias),this.roughnessMap&&this.roughnessMap.isTexture&&(i.roughnessMap=this.roughnessMap.toJSON(t).uuid),this.metalnessMap&&this.metalnessMap.isTexture&&(i.metalnessMap=this.metalnessMap.toJSON(t).uuid),this.emissiveMap&&this.emissiveMap.isTexture&&(i.emissiveMap=this.emissiveMap.toJSON(t).uuid),this.specularMap&&this.specularMap.isTexture&&(i.specularMap=this.specularMap.toJSON(t).uuid),this.specularIntensityMap&&this.specularIntensityMap.isTexture&&(i.specularIntensityMap=this.specularIntensityMap.toJSON(t).uuid),this.specularColorMap&&this.specularColorMap.isTexture&&(i.specularColorMap=this.specularColorMap.toJSON(t).uuid),this.envMap&&this.envMap.isTexture&&(i.envMap=this.envMap.toJSON(t).uuid,this.combine!==void 0&&(i.combine=this.combine)),this.envMapRotation!==void 0&&(i.envMapRotation=this.envMapRotation.toArray()),this.envMapIntensity!==void 0&&(i.envMapIntensity=this.envMapIntensity),this.reflectivity!==void 0&&(i.reflectivity=this.reflectivity),this.refractionRatio!==void 0&&(i.refractionRatio=this.refractionRatio),this.gradientMap&&this.gradientMap.isTexture&&(i.gradientMap=this.gradientMap.toJSON(t).uuid),this.transmission!==void 0&&(i.transmission=this.transmission),this.transmissionMap&&this.transmissionMap.isTexture&&(i.transmissionMap=this.transmissionMap.toJSON(t).uuid),this.thickness!==void 0&&(i.thickness=this.thickness),this.thicknessMap&&this.thicknessMap.isTexture&&(i.thicknessMap=this.thicknessMap.toJSON(t).uuid),this.attenuationDistance!==void 0&&(i.attenuationDistance=this.attenuationDistance),this.attenuationColor!==void 0&&(i.attenuationColor=this.attenuationColor.getHex()),this.size!==void 0&&(i.size=this.size),this.sizeAttenuation!==void 0&&(i.sizeAttenuation=this.sizeAttenuation),Array.isArray(this.clippingPlanes)&&this.clippingPlanes.length>0&&(i.clippingPlanes=this.clippingPlanes.map(r=>r.toJSON())),this.rotation!==void 0&&(i.rotation=this.rotation),this.depthPacking!==void 0&&(i.depthPacking=this.depthPacking),this.linewidth!==void 0&&(i.linewidth=this.linewidth),this.linecap!==void 0&&(i.linecap=this.linecap),this.linejoin!==void 0&&(i.linejoin=this.linejoin),this.dashSize!==void 0&&(i.dashSize=this.dashSize),this.gapSize!==void 0&&(i.gapSize=this.gapSize),this.scale!==void 0&&(i.scale=this.scale),this.wireframe!==void 0&&(i.wireframe=this.wireframe),this.wireframeLinewidth!==void 0&&(i.wireframeLinewidth=this.wireframeLinewidth),this.wireframeLinecap!==void 0&&(i.wireframeLinecap=this.wireframeLinecap),this.wireframeLinejoin!==void 0&&(i.wireframeLinejoin=this.wireframeLinejoin),this.flatShading!==void 0&&(i.flatShading=this.flatShading),this.fog!==void 0&&(i.fog=this.fog),Object.keys(this.userData).length>0&&(i.userData=this.userData);function s(r){const a=[];for(const o in r){const l=r[o];delete l.metadata,a.push(l)}return a}if(e){const r=s(t.textures),a=s(t.images);r.length>0&&(i.textures=r),a.length>0&&(i.images=a)}return i}fromJSON(t,e){if(t.uuid!==void 0&&(this.uuid=t.uuid),t.name!==void 0&&(this.name=t.name),t.color!==void 0&&this.color!==void 0&&this.color.setHex(t.color),t.roughness!==void 0&&(this.roughness=t.roughness),t.metalness!==void 0&&(this.metalness=t.metalness),t.sheen!==void 0&&(this.sheen=t.sheen),t.sheenColor!==void 0&&(this.sheenColor=new Xt().setHex(t.sheenColor)),t.sheenRoughness!==void 0&&(this.sheenRoughness=t.sheenRoughness),t.emissive!==void 0&&this.emissive!==void 0&&this.emissive.setHex(t.emissive),t.specular!==void 0&&this.specular!==void 0&&this.specular.setHex(t.specular),t.specularIntensity!==void 0&&(this.specularIntensity=t.specularIntensity),t.specularColor!==void 0&&this.specularColor!==void 0&&this.specularColor.setHex(t.specularColor),t.shininess!==void 0&&(this.shininess=t.shininess),t.clearcoat!==void 0&&(this.clearcoat=t.clearcoat),t.clearcoatRoughness!==void 0&&(this.clearcoatRoughness=t.clearcoatRoughness),t.diffuseRoughness!==void 0&&(this.diffuseRoughness=t.diffuseRoughness),t.dispersion!==void 0&&(this.dispersion=t.dispersion),t.retroreflectivity!==void 0&&(this.retroreflectivity=t.retroreflectivity),t.iridescence!==void 0&&(this.iridescence=t.iridescence),t.iridescenceIOR!==void 0&&(this.iridescenceIOR=t.iridescenceIOR),t.iridescenceThicknessMinimum!==void 0&&(this.iridescenceThicknessMinimum=t.iridescenceThicknessMinimum),t.iridescenceThicknessMaximum!==void 0&&(this.iridescenceThicknessMaximum=t.iridescenceThicknessMaximum),t.iridescenceThicknessRange!==void 0&&(this.iridescenceThicknessMinimum=t.iridescenceThicknessRange[0],this.iridescenceThicknessMaximum=t.iridescenceThicknessRange[1]),t.transmission!==void 0&&(this.transmission=t.transmission),t.thickness!==void 0&&(this.thickness=t.thickness),t.attenuationDistance!==void 0&&(this.attenuationDistance=t.attenuationDistance),t.attenuationColor!==void 0&&this.attenuationColor!==void 0&&this.attenuationColor.setHex(t.attenuationColor),t.anisotropy!==void 0&&(this.anisotropy=t.anisotropy),t.anisotropyRotation!==void 0&&(this.anisotropyRotation=t.anisotropyRotation),t.fog!==void 0&&(this.fog=t.fog),t.flatShading!==void 0&&(this.flatShading=t.flatShading),t.blending!==void 0&&(this.blending=t.blending),t.combine!==void 0&&(this.combine=t.combine),t.side!==void 0&&(this.side=t.side),t.shadowSide!==void 0&&(this.shadowSide=t.shadowSide),t.opacity!==void 0&&(this.opacity=t.opacity),t.transparent!==void 0&&(this.transparent=t.transparent),t.alphaTest!==void 0&&(this.alphaTest=t.alphaTest),t.alphaHash!==void 0&&(this.alphaHash=t.alphaHash),t.depthFunc!==void 0&&(this.depthFunc=t.depthFunc),t.depthTest!==void 0&&(this.depthTest=t.depthTest),t.depthWrite!==void 0&&(this.depthWrite=t.depthWrite),t.colorWrite!==void 0&&(this.colorWrite=t.colorWrite),t.clippingPlanes!==void 0&&(this.clippingPlanes=t.clippingPlanes.map(i=>new vn().fromJSON(i))),t.clipIntersection!==void 0&&(this.clipIntersection=t.clipIntersection),t.clipShadows!==void 0&&(this.clipShadows=t.clipShadows),t.depthPacking!==void 0&&(this.depthPacking=t.depthPacking),t.blendSrc!==void 0&&(this.blendSrc=t.blendSrc),t.blendDst!==void 0&&(this.blendDst=t.blendDst),t.blendEquation!==void 0&&(this.blendEquation=t.blendEquation),t.blendSrcAlpha!==void 0&&(this.blendSrcAlpha=t.blendSrcAlpha),t.blendDstAlpha!==void 0&&(this.blendDstAlpha=t.blendDstAlpha),t.blendEquationAlpha!==void 0&&(this.blendEquationAlpha=t.blendEquationAlpha),t.blendColor!==void 0&&this.blendColor!==void 0&&this.blendColor.setHex(t.blendColor),t.blendAlpha!==void 0&&(this.blendAlpha=t.blendAlpha),t.stencilWriteMask!==void 0&&(this.stencilWriteMask=t.stencilWriteMask),t.stencilFunc!==void 0&&(this.stencilFunc=t.stencilFunc),t.stencilRef!==void 0&&(this.stencilRef=t.stencilRef),t.stencilFuncMask!==void 0&&(this.stencilFuncMask=t.stencilFuncMask),t.stencilFail!==void 0&&(this.stencilFail=t.stencilFail),t.stencilZFail!==void 0&&(this.stencilZFail=t.stencilZFail),t.stencilZPass!==void 0&&(this.stencilZPass=t.stencilZPass),t.stencilWrite!==void 0&&(this.stencilWrite=t.stencilWrite),t.wireframe!==void 0&&(this.wireframe=t.wireframe),t.wireframeLinewidth!==void 0&&(this.wireframeLinewidth=t.wireframeLinewidth),t.wireframeLinecap!==void 0&&(this.wireframeLinecap=t.wireframeLinecap),t.wireframeLinejoin!==void 0&&(this.wireframeLinejoin=t.wireframeLinejoin),t.rotation!==void 0&&(this.rotation=t.rotation),t.linewidth!==void 0&&(this.linewidth=t.linewidth),t.linecap!==void 0&&(this.linecap=t.linecap),t.linejoin!==void 0&&(this.linejoin=t.linejoin),t.dashSize!==void 0&&(this.dashSize=t.dashSize),t.gapSize!==void 0&&(this.gapSize=t.gapSize),t.scale!==void 0&&(this.scale=t.scale),t.polygonOffset!==void 0&&(this.polygonOffset=t.polygonOffset),t.polygonOffsetFactor!==void 0&&(this.polygonOffsetFactor=t.polygonOffsetFactor),t.polygonOffsetUnits!==void 0&&(this.polygonOffsetUnits=t.polygonOffsetUnits),t.dithering!==void 0&&(this.dithering=t.dithering),t.alphaToCoverage!==void 0&&(this.alphaToCoverage=t.alphaToCoverage),t.premultipliedAlpha!==void 0&&(this.premultipliedAlpha=t.premultipliedAlpha),t.forceSinglePass!==void 0&&(this.forceSinglePass=t.forceSinglePass),t.allowOverride!==void 0&&(this.allowOverride=t.allowOverride),t.visible!==void 0&&(this.visible=t.visible),t.toneMapped!==void 0&&(this.toneMapped=t.toneMapped),t.userData!==void 0&&(this.userData=t.userData),t.vertexColors!==void 0&&(typeof t.vertexColors=="number"?this.vertexColors=t.vertexColors>0:this.vertexColors=t.vertexColors),t.size!==void 0&&(this.size=t.size),t.sizeAttenuation!==void 0&&(this.sizeAttenuation=t.sizeAttenuation),t.map!==void 0&&(this.map=e[t.map]||null),t.matcap!==void 0&&(this.matcap=e[t.matcap]||null),t.alphaMap!==void 0&&(this.alphaMap=e[t.alphaMap]||null),t.bumpMap!==void 0&&(this.bumpMap=e[t.bumpMap]||null),t.bumpScale!==void 0&&(this.bumpScale=t.bumpScale),t.normalMap!==void 0&&(this.normalMap=e[t.normalMap]||null),t.normalMapType!==void 0&&(this.normalMapType=t.normalMapType),t.normalScale!==void 0){let i=t.normalScale;Array.isArray(i)===!1&&(i=[i,i]),this.normalScale=new Rt().fromArray(i)}return t.displacementMap!==void 0&&(this.displacementMap=e[t.displacementMap]||null),t.displacementScale!==void 0&&(this.displacementScale=t.displacementScale),t.displacementBias!==void 0&&(this.displacementBias=t.displacementBias),t.roughnessMap!==void 0&&(this.roughnessMap=e[t.roughnessMap]||null),t.metalnessMap!==void 0&&(this.metalnessMap=e[t.metalnessMap]||null),t.emissiveMap!==void 0&&(this.emissiveMap=e[t.emissiveMap]||null),t.emissiveIntensity!==void 0&&(this.emissiveIntensity=t.emissiveIntensity),t.specularMap!==void 0&&(this.specularMap=e[t.specularMap]||null),t.specularIntensityMap!==void 0&&(this.specularIntensityMap=e[t.specularIntensityMap]||null),t.specularColorMap!==void 0&&(this.specularColorMap=e[t.specularColorMap]||null),t.envMap!==void 0&&(this.envMap=e[t.envMap]||null),t.envMapRotation!==void 0&&this.envMapRotation.fromArray(t.envMapRotation),t.envMapIntensity!==void 0&&(this.envMapIntensity=t.envMapIntensity),t.reflectivity!==void 0&&(this.reflectivity=t.reflectivity),t.refractionRatio!==void 0&&(this.refractionRatio=t.refractionRatio),t.lightMap!==void 0&&(this.lightMap=e[t.lightMap]||null),t.lightMapIntensity!==void 0&&(this.lightMapIntensity=t.lightMapIntensity),t.aoMap!==void 0&&(this.aoMap=e[t.aoMap]||null),t.aoMapIntensity!==void 0&&(this.aoMapIntensity=t.aoMapIntensity),t.gradientMap!==void 0&&(this.gradientMap=e[t.gradientMap]||null),t.clearcoatMap!==void 0&&(this.clearcoatMap=e[t.clearcoatMap]||null),t.clearcoatRoughnessMap!==void 0&&(this.clearcoatRoughnessMap=e[t.clearcoatRoughnessMap]||null),t.clearcoatNormalMap!==void 0&&(this.clearcoatNormalMap=e[t.clearcoatNormalMap]||null),t.clearcoatNormalScale!==void 0&&(this.clearcoatNormalScale=new Rt().fromArray(t.clearcoatNormalScale)),t.diffuseRoughnessMap!==void 0&&(this.diffuseRoughnessMap=e[t.diffuseRoughnessMap]||null),t.iridescenceMap!==void 0&&(this.iridescenceMap=e[t.iridescenceMap]||null),t.iridescenceThicknessMap!==void 0&&(this.iridescenceThicknessMap=e[t.iridescenceThicknessMap]||null),t.transmissionMap!==void 0&&(this.transmissionMap=e[t.transmissionMap]||null),t.thicknessMap!==void 0&&(this.thicknessMap=e[t.thicknessMap]||null),t.anisotropyMap!==void 0&&(this.anisotropyMap=e[t.anisotropyMap]||null),t.sheenColorMap!==void 0&&(this.sheenColorMap=e[t.sheenColorMap]||null),t.sheenRoughnessMap!==void 0&&(this.sheenRoughnessMap=e[t.sheenRoughnessMap]||null),this}clone(){return new this.constructor().copy(this)}copy(t){this.name=t.name,this.blending=t.blending,this.side=t.side,this.vertexColors=t.vertexColors,this.opacity=t.opacity,this.transparent=t.transparent,this.blendSrc=t.blendSrc,this.blendDst=t.blendDst,this.blendEquation=t.blendEquation,this.blendSrcAlpha=t.blendSrcAlpha,this.blendDstAlpha=t.blendDstAlpha,this.blendEquationAlpha=t.blendEquationAlpha,this.blendColor.copy(t.blendColor),this.blendAlpha=t.blendAlpha,this.depthFunc=t.depthFunc,this.depthTest=t.depthTest,this.depthWrite=t.depthWrite,this.stencilWriteMask=t.stencilWriteMask,this.stencilFunc=t.stencilFunc,this.stencilRef=t.stencilRef,this.stencilFuncMask=t.stencilFuncMask,this.stencilFail=t.stencilFail,this.stencilZFail=t.stencilZFail,this.stencilZPass=t.stencilZPass,this.stencilWrite=t.stencilWrite;const e=t.clippingPlanes;let i=null;if(e!==null){const s=e.length;i=new Array(s);for(let r=0;r!==s;++r)i[r]=e[r].clone()}return this.clippingPlanes=i,this.clipIntersection=t.clipIntersection,this.clipShadows=t.clipShadows,this.shadowSide=t.shadowSide,this.colorWrite=t.colorWrite,this.precision=t.precision,this.polygonOffset=t.polygonOffset,this.polygonOffsetFactor=t.polygonOffsetFactor,this.polygonOffsetUnits=t.polygonOffsetUnits,this.dithering=t.dithering,this.alphaTest=t.alphaTest,this.alphaHash=t.alphaHash,this.alphaToCoverage=t.alphaToCoverage,this.premultipliedAlpha=t.premultipliedAlpha,this.forceSinglePass=t.forceSinglePass,this.allowOverride=t.allowOverride,this.visible=t.visible,this.toneMapped=t.toneMapped,this.userData=JSON.parse(JSON.stringify(t.userData)),this}dispose(){this.dispatchEvent({type:"dispose"})}set needsUpdate(t){t===!0&&this.version++}}const Kn=new I,io=new I,dr=new I,fr=new I;class Js{constructor(t=new I,e=new I(0,0,-1)){this.origin=t,this.direction=e}set(t,e){return this.origin.copy(t),this.direction.copy(e),this}copy(t){return this.origin.copy(t.origin),this.direction.copy(t.direction),this}at(t,e){return e.copy(this.origin).addScaledVector(this.direction,t)}lookAt(t){return this.direction.copy(t).sub(this.origin).normalize(),this}recast(t){return this.origin.copy(this.at(t,Kn)),this}closestPointToPoint(t,e){e.subVectors(t,this.origin);const i=e.dot(this.direction);return i<0?e.copy(this.origin):e.copy(this.origin).addScaledVector(this.direction,i)}distanceToPoint(t){return Math.sqrt(this.distanceSqToPoint(t))}distanceSqToPoint(t){const e=Kn.subVectors(t,this.origin).dot(this.direction);return e<0?this.origin.distanceToSquared(t):(Kn.copy(this.origin).addScaledVector(this.direction,e),Kn.distanceToSquared(t))}distanceSqToSegment(t,e,i,s){io.copy(t).add(e).multiplyScalar(.5),dr.copy(e).sub(t).normalize(),fr.copy(this.origin).sub(io);const r=t.distanceTo(e)*.5,a=-this.direction.dot(dr),o=fr.dot(this.direction),l=-fr.dot(dr),c=fr.lengthSq(),h=Math.abs(1-a*a);let d,u,f,g;if(h>0)if(d=a*l-o,u=a*o-l,g=r*h,d>=0)if(u>=-g)if(u<=g){const S=1/h;d*=S,u*=S,f=d*(d+a*u+2*o)+u*(a*d+u+2*l)+c}else u=r,d=Math.max(0,-(a*u+o)),f=-d*d+u*(u+2*l)+c;else u=-r,d=Math.max(0,-(a*u+o)),f=-d*d+u*(u+2*l)+c;else u<=-g?(d=Math.max(0,-(-a*r+o)),u=d>0?-r:Math.min(Math.max(-r,-l),r),f=-d*d+u*(u+2*l)+c):u<=g?(d=0,u=Math.min(Math.max(-r,-l),r),f=u*(u+2*l)+c):(d=Math.max(0,-(a*r+o)),u=d>0?r:Math.min(Math.max(-r,-l),r),f=-d*d+u*(u+2*l)+c);else u=a>0?-r:r,d=Math.max(0,-(a*u+o)),f=-d*d+u*(u+2*l)+c;return i&&i.copy(this.origin).addScaledVector(this.direction,d),s&&s.copy(io).addScaledVector(dr,u),f}intersectSphere(t,e){if(t.radius<0)return null;Kn.subVectors(t.center,this.origin);const i=Kn.dot(this.direction),s=Kn.dot(Kn)-i*i,r=t.radius*t.radius;if(s>r)return null;const a=Math.sqrt(r-s),o=i-a,l=i+a;return l<0?null:o<0?this.at(l,e):this.at(o,e)}intersectsSphere(t){return t.radius<0?!1:this.distanceSqToPoint(t.center)<=t.radius*t.radius}distanceToPlane(t){const e=t.normal.dot(this.direction);if(e===0)return t.distanceToPoint(this.origin)===0?0:null;const i=-(this.origin.dot(t.normal)+t.constant)/e;return i>=0?i:null}intersectPlane(t,e){const i=this.distanceToPlane(t);return i===null?null:this.at(i,e)}intersectsPlane(t){const e=t.distanceToPoint(this.origin);return e===0||t.normal.dot(this.direction)*e<0}intersectBox(t,e){let i,s,r,a,o,l;const c=1/this.direction.x,h=1/this.direction.y,d=1/this.direction.z,u=this.origin;return c>=0?(i=(t.min.x-u.x)*c,s=(t.max.x-u.x)*c):(i=(t.max.x-u.x)*c,s=(t.min.x-u.x)*c),h>=0?(r=(t.min.y-u.y)*h,a=(t.max.y-u.y)*h):(r=(t.max.y-u.y)*h,a=(t.min.y-u.y)*h),i>a||r>s||((r>i||isNaN(i))&&(i=r),(a<s||isNaN(s))&&(s=a),d>=0?(o=(t.min.z-u.z)*d,l=(t.max.z-u.z)*d):(o=(t.max.z-u.z)*d,l=(t.min.z-u.z)*d),i>l||o>s)||((o>i||i!==i)&&(i=o),(l<s||s!==s)&&(s=l),s<0)?null:this.at(i>=0?i:s,e)}intersectsBox(t){return this.intersectBox(t,Kn)!==null}intersectTriangle(t,e,i,s,r){const a=this.origin,o=this.direction,l=o.x,c=o.y,h=o.z,d=t.x-a.x,u=t.y-a.y,f=t.z-a.z,g=e.x-a.x,S=e.y-a.y,m=e.z-a.z,p=i.x-a.x,x=i.y-a.y,y=i.z-a.z,v=Math.abs(l),M=Math.abs(c),A=Math.abs(h);let _,E,D,w,P,N,F,C,B,W,k,et;if(v>=M&&v>=A?(D=l,N=d,B=g,et=p,l>=0?(_=c,E=h,w=u,P=f,F=S,C=m,W=x,k=y):(_=h,E=c,w=f,P=u,F=m,C=S,W=y,k=x)):M>=A?(D=c,N=u,B=S,et=x,c>=0?(_=h,E=l,w=f,P=d,F=m,C=g,W=y,k=p):(_=l,E=h,w=d,P=f,F=g,C=m,W=p,k=y)):(D=h,N=f,B=m,et=y,h>=0?(_=l,E=c,w=d,P=u,F=g,C=S,W=p,k=x):(_=c,E=l,w=u,P=d,F=S,C=g,W=x,k=p)),D===0)return null;const q=_/D,j=E/D,tt=1/D,St=w-q*N,Dt=P-j*N,Z=F-q*B,ht=C-j*B,vt=W-q*et,At=k-j*et,mt=vt*ht-At*Z,Nt=St*At-Dt*vt,he=Z*Dt-ht*St;if(s){if(mt<0||Nt<0||he<0)return null}else if((mt<0||Nt<0||he<0)&&(mt>0||Nt>0||he>0))return null;const Ct=mt+Nt+he;if(Ct===0)return null;const Yt=tt*(mt*N+Nt*B+he*et);return(Ct>0?Yt<0:Yt>0)?null:this.at(Yt/Ct,r)}applyMatrix4(t){return this.origin.applyMatrix4(t),this.direction.transformDirection(t),this}equals(t){return t.origin.equals(this.origin)&&t.direction.equals(this.direction)}clone(){return new this.constructor().copy(this)}}class gl extends Ss{constructor(t){super(),this.isMeshBasicMaterial=!0,this.type="MeshBasicMaterial",this.color=new Xt(16777215),this.map=null,this.lightMap=null,this.lightMapIntensity=1,this.aoMap=null,this.aoMapIntensity=1,this.specularMap=null,this.alphaMap=null,this.envMap=null,this.envMapRotation=new yi,this.combine=Ol,this.reflectivity=1,this.refractionRatio=.98,this.wireframe=!1,this.wireframeLinewidth=1,this.wireframeLinecap="round",this.wireframeLinejoin="round",this.fog=!0,this.setValues(t)}copy(t){return super.copy(t),this.color.copy(t.color),this.map=t.map,this.lightMap=t.lightMap,this.lightMapIntensity=t.lightMapIntensity,this.aoMap=t.aoMap,this.aoMapIntensity=t.aoMapIntensity,this.specularMap=t.specularMap,this.alphaMap=t.alphaMap,this.envMap=t.envMap,this.envMapRotation.copy(t.envMapRotation),this.combine=t.combine,this.reflectivity=t.reflectivity,this.refractionRatio=t.refractionRatio,this.wireframe=t.wireframe,this.wireframeLinewidth=t.wireframeLinewidth,this.wireframeLinecap=t.wireframeLinecap,this.wireframeLinejoin=t.wireframeLinejoin,this.fog=t.fog,this}}const Jc=new $t,Ci=new Js,pr=new Zs,Qc=new I,mr=new I,_r=new I,gr=new I,so=new I,xr=new I,jc=new I,vr=new I;class Sn extends He{constructor(t=new hn,e=new gl){super(),this.isMesh=!0,this.type="Mesh",this.geometry=t,this.material=e,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.count=1,this.updateMorphTargets()}copy(t,e){return super.copy(t,e),t.morphTargetInfluences!==void 0?this.morphTargetInfluences=t.morphTargetInfluences.slice():this.morphTargetInfluences=void 0,t.morphTargetDictionary!==void 0?this.morphTargetDictionary=Object.assign({},t.morphTargetDictionary):this.morphTargetDictionary=void 0,this.material=Array.isArray(t.material)?t.material.slice():t.material,this.geometry=t.geometry,this}updateMorphTargets(){const e=this.geometry.morphAttributes,i=Object.keys(e);if(i.length>0){const s=e[i[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,a=s.length;r<a;r++){const o=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[o]=r}}}}getVertexPosition(t,e){const i=this.geometry,s=i.attributes.position,r=i.morphAttributes.position,a=i.morphTargetsRelative;e.fromBufferAttribute(s,t);const o=this.morphTargetInfluences;if(r&&o){xr.set(0,0,0);for(let l=0,c=r.length;l<c;l++){const h=o[l],d=r[l];h!==0&&(so.fromBufferAttribute(d,t),a?xr.addScaledVector(so,h):xr.addScaledVector(so.sub(e),h))}e.add(xr)}return e}intersectsFrustum(t){return t.intersectsObject(this)}raycast(t,e){const i=this.geometry,s=this.material,r=this.matrixWorld;s!==void 0&&(i.boundingSphere===null&&i.computeBoundingSphere(),pr.copy(i.boundingSphere),pr.applyMatrix4(r),Ci.copy(t.ray).recast(t.near),!(pr.containsPoint(Ci.origin)===!1&&(Ci.intersectSphere(pr,Qc)===null||Ci.origin.distanceToSquared(Qc)>(t.far-t.near)**2))&&(Jc.copy(r).invert(),Ci.copy(t.ray).applyMatrix4(Jc),!(i.boundingBox!==null&&Ci.intersectsBox(i.boundingBox)===!1)&&this._computeIntersections(t,e,Ci)))}_computeIntersections(t,e,i){let s;const r=this.geometry,a=this.material,o=r.index,l=r.attributes.position,c=r.attributes.uv,h=r.attributes.uv1,d=r.attributes.normal,u=r.groups,f=r.drawRange;if(o!==null)if(Array.isArray(a))for(let g=0,S=u.length;g<S;g++){const m=u[g],p=a[m.materialIndex],x=Math.max(m.start,f.start),y=Math.min(o.count,Math.min(m.start+m.count,f.start+f.count));for(let v=x,M=y;v<M;v+=3){const A=o.getX(v),_=o.getX(v+1),E=o.getX(v+2);s=Sr(this,p,t,i,c,h,d,A,_,E),s&&(s.faceIndex=Math.floor(v/3),s.face.materialIndex=m.materialIndex,e.push(s))}}else{const g=Math.max(0,f.start),S=Math.min(o.count,f.start+f.count);for(let m=g,p=S;m<p;m+=3){const x=o.getX(m),y=o.getX(m+1),v=o.getX(m+2);s=Sr(this,a,t,i,c,h,d,x,y,v),s&&(s.faceIndex=Math.floor(m/3),e.push(s))}}else if(l!==void 0)if(Array.isArray(a))for(let g=0,S=u.length;g<S;g++){const m=u[g],p=a[m.materialIndex],x=Math.max(m.start,f.start),y=Math.min(l.count,Math.min(m.start+m.count,f.start+f.count));for(let v=x,M=y;v<M;v+=3){const A=v,_=v+1,E=v+2;s=Sr(this,p,t,i,c,h,d,A,_,E),s&&(s.faceIndex=Math.floor(v/3),s.face.materialIndex=m.materialIndex,e.push(s))}}else{const g=Math.max(0,f.start),S=Math.min(l.count,f.start+f.count);for(let m=g,p=S;m<p;m+=3){const x=m,y=m+1,v=m+2;s=Sr(this,a,t,i,c,h,d,x,y,v),s&&(s.faceIndex=Math.floor(m/3),e.push(s))}}}}function Sp(n,t,e,i,s,r,a,o){let l;if(t.side===Qe?l=i.intersectTriangle(a,r,s,!0,o):l=i.intersectTriangle(s,r,a,t.side===ni,o),l===null)return null;vr.copy(o),vr.applyMatrix4(n.matrixWorld);const c=e.ray.origin.distanceTo(vr);return c<e.near||c>e.far?null:{distance:c,point:vr.clone(),object:n}}function Sr(n,t,e,i,s,r,a,o,l,c){n.getVertexPosition(o,mr),n.getVertexPosition(l,_r),n.getVertexPosition(c,gr);const h=Sp(n,t,e,i,mr,_r,gr,jc);if(h){const d=new I;ze.getBarycoord(jc,mr,_r,gr,d),s&&(h.uv=ze.getInterpolatedAttribute(s,o,l,c,d,new Rt)),r&&(h.uv1=ze.getInterpolatedAttribute(r,o,l,c,d,new Rt)),a&&(h.normal=ze.getInterpolatedAttribute(a,o,l,c,d,new I),h.normal.dot(i.direction)>0&&h.normal.multiplyScalar(-1));const u={a:o,b:l,c,normal:new I,materialIndex:0};ze.getNormal(mr,_r,gr,u.normal),h.face=u,h.barycoord=d}return h}class sd extends je{constructor(t=null,e=1,i=1,s,r,a,o,l,c=ke,h=ke,d,u){super(null,a,o,l,c,h,s,r,d,u),this.isDataTexture=!0,this.image={data:t,width:e,height:i},this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1}}const Pi=new Zs,Mp=new Rt(.5,.5),Mr=new I;class $s{constructor(t=new vn,e=new vn,i=new vn,s=new vn,r=new vn,a=new vn){this.planes=[t,e,i,s,r,a]}set(t,e,i,s,r,a){const o=this.planes;return o[0].copy(t),o[1].copy(e),o[2].copy(i),o[3].copy(s),o[4].copy(r),o[5].copy(a),this}copy(t){const e=this.planes;for(let i=0;i<6;i++)e[i].copy(t.planes[i]);return this}setFromProjectionMatrix(t,e=Pn,i=!1){const s=this.planes,r=t.elements,a=r[0],o=r[1],l=r[2],c=r[3],h=r[4],d=r[5],u=r[6],f=r[7],g=r[8],S=r[9],m=r[10],p=r[11],x=r[12],y=r[13],v=r[14],M=r[15];if(s[0].setComponents(c-a,f-h,p-g,M-x).normalize(),s[1].setComponents(c+a,f+h,p+g,M+x).normalize(),s[2].setComponents(c+o,f+d,p+S,M+y).normalize(),s[3].setComponents(c-o,f-d,p-S,M-y).normalize(),i)s[4].setComponents(l,u,m,v).normalize(),s[5].setComponents(c-l,f-u,p-m,M-v).normalize();else if(s[4].setComponents(c-l,f-u,p-m,M-v).normalize(),e===Pn)s[5].setComponents(c+l,f+u,p+m,M+v).normalize();else if(e===qs)s[5].setComponents(l,u,m,v).normalize();else throw new Error("THREE.Frustum.setFromProjectionMatrix(): Invalid coordinate system: "+e);return this}intersectsObject(t){if(t.boundingSphere!==void 0)t.boundingSphere===null&&t.computeBoundingSphere(),Pi.copy(t.boundingSphere).applyMatrix4(t.matrixWorld);else{const e=t.geometry;e.boundingSphere===null&&e.computeBoundingSphere(),Pi.copy(e.boundingSphere).applyMatrix4(t.matrixWorld)}return this.intersectsSphere(Pi)}intersectsSprite(t){Pi.center.set(0,0,0);const e=Mp.distanceTo(t.center);return Pi.radius=.7071067811865476+e,Pi.applyMatrix4(t.matrixWorld),this.intersectsSphere(Pi)}intersectsSphere(t){const e=this.planes,i=t.center,s=-t.radius;for(let r=0;r<6;r++)if(e[r].distanceToPoint(i)<s)return!1;return!0}intersectsBox(t){const e=this.planes;for(let i=0;i<6;i++){const s=e[i];if(Mr.x=s.normal.x>0?t.max.x:t.min.x,Mr.y=s.normal.y>0?t.max.y:t.min.y,Mr.z=s.normal.z>0?t.max.z:t.min.z,s.distanceToPoint(Mr)<0)return!1}return!0}containsPoint(t){const e=this.planes;for(let i=0;i<6;i++)if(e[i].distanceToPoint(t)<0)return!1;return!0}clone(){return new this.constructor().copy(this)}}const tu=new $t;class $l{constructor(){this.coordinateSystem=Pn,this._frustums=[],this._count=0}setFromArrayCamera(t){const e=t.cameras,i=this._frustums;for(let s=0;s<e.length;s++){const r=e[s];tu.multiplyMatrices(r.projectionMatrix,r.matrixWorldInverse),i[s]===void 0&&(i[s]=new $s),i[s].setFromProjectionMatrix(tu,r.coordinateSystem,r.reversedDepth)}return this._count=e.length,this}getFrustum(t){return this._frustums[t]}intersectsObject(t){const e=this._frustums;for(let i=0;i<this._count;i++)if(e[i].intersectsObject(t))return!0;return!1}intersectsSprite(t){const e=this._frustums;for(let i=0;i<this._count;i++)if(e[i].intersectsSprite(t))return!0;return!1}intersectsSphere(t){const e=this._frustums;for(let i=0;i<this._count;i++)if(e[i].intersectsSphere(t))return!0;return!1}intersectsBox(t){const e=this._frustums;for(let i=0;i<this._count;i++)if(e[i].intersectsBox(t))return!0;return!1}containsPoint(t){const e=this._frustums;for(let i=0;i<this._count;i++)if(e[i].containsPoint(t))return!0;return!1}copy(t){this.coordinateSystem=t.coordinateSystem;const e=this._frustums,i=t._frustums;for(let s=0;s<t._count;s++)e[s]===void 0&&(e[s]=new $s),e[s].copy(i[s]);return this._count=t._count,this}clone(){return new $l().copy(this)}}class rd extends Ss{constructor(t){super(),this.isLineBasicMaterial=!0,this.type="LineBasicMaterial",this.color=new Xt(16777215),this.map=null,this.linewidth=1,this.linecap="round",this.linejoin="round",this.fog=!0,this.setValues(t)}copy(t){return super.copy(t),this.color.copy(t.color),this.map=t.map,this.linewidth=t.linewidth,this.linecap=t.linecap,this.linejoin=t.linejoin,this.fog=t.fog,this}}const xa=new I,va=new I,eu=new $t,As=new Js,yr=new Zs,ro=new I,nu=new I;class yp extends He{constructor(t=new hn,e=new rd){super(),this.isLine=!0,this.type="Line",this.geometry=t,this.material=e,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.updateMorphTargets()}copy(t,e){return super.copy(t,e),t.morphTargetInfluences!==void 0?this.morphTargetInfluences=t.morphTargetInfluences.slice():this.morphTargetInfluences=void 0,t.morphTargetDictionary!==void 0?this.morphTargetDictionary=Object.assign({},t.morphTargetDictionary):this.morphTargetDictionary=void 0,this.material=Array.isArray(t.material)?t.material.slice():t.material,this.geometry=t.geometry,this}computeLineDistances(){const t=this.geometry;if(t.index===null){const e=t.attributes.position,i=[0];for(let s=1,r=e.count;s<r;s++)xa.fromBufferAttribute(e,s-1),va.fromBufferAttribute(e,s),i[s]=i[s-1],i[s]+=xa.distanceTo(va);t.setAttribute("lineDistance",new Fe(i,1))}else Lt("Line.computeLineDistances(): Computation only possible with non-indexed BufferGeometry.");return this}intersectsFrustum(t){return t.intersectsObject(this)}raycast(t,e){const i=this.geometry,s=this.matrixWorld,r=t.params.Line.threshold,a=i.drawRange;if(i.boundingSphere===null&&i.computeBoundingSphere(),yr.copy(i.boundingSphere),yr.applyMatrix4(s),yr.radius+=r,t.ray.intersectsSphere(yr)===!1)return;eu.copy(s).invert(),As.copy(t.ray).applyMatrix4(eu);const o=r/((this.scale.x+this.scale.y+this.scale.z)/3),l=o*o,c=this.isLineSegments?2:1,h=i.index,u=i.attributes.position;if(h!==null){const f=Math.max(0,a.start),g=Math.min(h.count,a.start+a.count);for(let S=f,m=g-1;S<m;S+=c){const p=h.getX(S),x=h.getX(S+1),y=Er(this,t,As,l,p,x,S);y&&e.push(y)}if(this.isLineLoop){const S=h.getX(g-1),m=h.getX(f),p=Er(this,t,As,l,S,m,g-1);p&&e.push(p)}}else{const f=Math.max(0,a.start),g=Math.min(u.count,a.start+a.count);for(let S=f,m=g-1;S<m;S+=c){const p=Er(this,t,As,l,S,S+1,S);p&&e.push(p)}if(this.isLineLoop){const S=Er(this,t,As,l,g-1,f,g-1);S&&e.push(S)}}}updateMorphTargets(){const e=this.geometry.morphAttributes,i=Object.keys(e);if(i.length>0){const s=e[i[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,a=s.length;r<a;r++){const o=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[o]=r}}}}}function Er(n,t,e,i,s,r,a){const o=n.geometry.attributes.position;if(xa.fromBufferAttribute(o,s),va.fromBufferAttribute(o,r),e.distanceSqToSegment(xa,va,ro,nu)>i)return;ro.applyMatrix4(n.matrixWorld);const c=t.ray.origin.distanceTo(ro);if(!(c<t.near||c>t.far))return{distance:c,point:nu.clone().applyMatrix4(n.matrixWorld),index:a,face:null,faceIndex:null,barycoord:null,object:n}}const iu=new I,su=new I;class Ep extends yp{constructor(t,e){super(t,e),this.isLineSegments=!0,this.type="LineSegments"}computeLineDistances(){const t=this.geometry;if(t.index===null){const e=t.attributes.position,i=[];for(let s=0,r=e.count;s<r;s+=2)iu.fromBufferAttribute(e,s),su.fromBufferAttribute(e,s+1),i[s]=s===0?0:i[s-1],i[s+1]=i[s]+iu.distanceTo(su);t.setAttribute("lineDistance",new Fe(i,1))}else Lt("LineSegments.computeLineDistances(): Computation only possible with non-indexed BufferGeometry.");return this}}class ad extends je{constructor(t=[],e=_s,i,s,r,a,o,l,c,h){super(t,e,i,s,r,a,o,l,c,h),this.isCubeTexture=!0,this.flipY=!1}get images(){return this.image}set images(t){this.image=t}}class xs extends je{constructor(t,e,i=Hn,s,r,a,o=ke,l=ke,c,h=Si,d=1){if(h!==Si&&h!==xi)throw new Error("THREE.DepthTexture: format must be either THREE.DepthFormat or THREE.DepthStencilFormat");const u={width:t,height:e,depth:d};super(u,s,r,a,o,l,h,i,c),this.isDepthTexture=!0,this.flipY=!1,this.generateMipmaps=!1,this.compareFunction=null}copy(t){return super.copy(t),this.source=new Wl(Object.assign({},t.image)),this.compareFunction=t.compareFunction,this}toJSON(t){const e=super.toJSON(t);return e.compareFunction=this.compareFunction,e}}class od extends xs{constructor(t,e=Hn,i=_s,s,r,a=ke,o=ke,l,c=Si){const h={width:t,height:t,depth:1},d=[h,h,h,h,h,h];super(t,t,e,i,s,r,a,o,l,c),this.image=d,this.isCubeDepthTexture=!0,this.isCubeTexture=!0}get images(){return this.image}set images(t){this.image=t}}class ld extends je{constructor(t=null){super(),this.sourceTexture=t,this.isExternalTexture=!0}copy(t){return super.copy(t),this.sourceTexture=t.sourceTexture,this}}class Qs extends hn{constructor(t=1,e=1,i=1,s=1,r=1,a=1){super(),this.type="BoxGeometry",this.parameters={width:t,height:e,depth:i,widthSegments:s,heightSegments:r,depthSegments:a};const o=this;s=Math.floor(s),r=Math.floor(r),a=Math.floor(a);const l=[],c=[],h=[],d=[];let u=0,f=0;g("z","y","x",-1,-1,i,e,t,a,r,0),g("z","y","x",1,-1,i,e,-t,a,r,1),g("x","z","y",1,1,t,i,e,s,a,2),g("x","z","y",1,-1,t,i,-e,s,a,3),g("x","y","z",1,-1,t,e,i,s,r,4),g("x","y","z",-1,-1,t,e,-i,s,r,5),this.setIndex(l),this.setAttribute("position",new Fe(c,3)),this.setAttribute("normal",new Fe(h,3)),this.setAttribute("uv",new Fe(d,2));function g(S,m,p,x,y,v,M,A,_,E,D){const w=v/_,P=M/E,N=v/2,F=M/2,C=A/2,B=_+1,W=E+1;let k=0,et=0;const q=new I;for(let j=0;j<W;j++){const tt=j*P-F;for(let St=0;St<B;St++){const Dt=St*w-N;q[S]=Dt*x,q[m]=tt*y,q[p]=C,c.push(q.x,q.y,q.z),q[S]=0,q[m]=0,q[p]=A>0?1:-1,h.push(q.x,q.y,q.z),d.push(St/_),d.push(1-j/E),k+=1}}for(let j=0;j<E;j++)for(let tt=0;tt<_;tt++){const St=u+tt+B*j,Dt=u+tt+B*(j+1),Z=u+(tt+1)+B*(j+1),ht=u+(tt+1)+B*j;l.push(St,Dt,ht),l.push(Dt,Z,ht),et+=6}o.addGroup(f,et,D),f+=et,u+=k}}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new Qs(t.width,t.height,t.depth,t.widthSegments,t.heightSegments,t.depthSegments)}}class Yl extends hn{constructor(t=1,e=1,i=1,s=32,r=1,a=!1,o=0,l=Math.PI*2){super(),this.type="CylinderGeometry",this.parameters={radiusTop:t,radiusBottom:e,height:i,radialSegments:s,heightSegments:r,openEnded:a,thetaStart:o,thetaLength:l};const c=this;s=Math.floor(s),r=Math.floor(r);const h=[],d=[],u=[],f=[];let g=0;const S=[],m=i/2;let p=0;x(),a===!1&&(t>0&&y(!0),e>0&&y(!1)),this.setIndex(h),this.setAttribute("position",new Fe(d,3)),this.setAttribute("normal",new Fe(u,3)),this.setAttribute("uv",new Fe(f,2));function x(){const v=new I,M=new I;let A=0;const _=(e-t)/i;for(let E=0;E<=r;E++){const D=[],w=E/r,P=w*(e-t)+t;for(let N=0;N<=s;N++){const F=N/s,C=F*l+o,B=Math.sin(C),W=Math.cos(C);M.x=P*B,M.y=-w*i+m,M.z=P*W,d.push(M.x,M.y,M.z),v.set(B,_,W).normalize(),u.push(v.x,v.y,v.z),f.push(F,1-w),D.push(g++)}S.push(D)}for(let E=0;E<s;E++)for(let D=0;D<r;D++){const w=S[D][E],P=S[D+1][E],N=S[D+1][E+1],F=S[D][E+1];(t>0||D!==0)&&(h.push(w,P,F),A+=3),(e>0||D!==r-1)&&(h.push(P,N,F),A+=3)}c.addGroup(p,A,0),p+=A}function y(v){const M=g,A=new Rt,_=new I;let E=0;const D=v===!0?t:e,w=v===!0?1:-1;for(let N=1;N<=s;N++)d.push(0,m*w,0),u.push(0,w,0),f.push(.5,.5),g++;const P=g;for(let N=0;N<=s;N++){const C=N/s*l+o,B=Math.cos(C),W=Math.sin(C);_.x=D*W,_.y=m*w,_.z=D*B,d.push(_.x,_.y,_.z),u.push(0,w,0),A.x=B*.5+.5,A.y=W*.5*w+.5,f.push(A.x,A.y),g++}for(let N=0;N<s;N++){const F=M+N,C=P+N;v===!0?h.push(C,C+1,F):h.push(C+1,C,F),E+=3}c.addGroup(p,E,v===!0?1:2),p+=E}}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new Yl(t.radiusTop,t.radiusBottom,t.height,t.radialSegments,t.heightSegments,t.openEnded,t.thetaStart,t.thetaLength)}}class Ta extends hn{constructor(t=1,e=1,i=1,s=1){super(),this.type="PlaneGeometry",this.parameters={width:t,height:e,widthSegments:i,heightSegments:s};const r=t/2,a=e/2,o=Math.floor(i),l=Math.floor(s),c=o+1,h=l+1,d=t/o,u=e/l,f=[],g=[],S=[],m=[];for(let p=0;p<h;p++){const x=p*u-a;for(let y=0;y<c;y++){const v=y*d-r;g.push(v,-x,0),S.push(0,0,1),m.push(y/o),m.push(1-p/l)}}for(let p=0;p<l;p++)for(let x=0;x<o;x++){const y=x+c*p,v=x+c*(p+1),M=x+1+c*(p+1),A=x+1+c*p;f.push(y,v,A),f.push(v,M,A)}this.setIndex(f),this.setAttribute("position",new Fe(g,3)),this.setAttribute("normal",new Fe(S,3)),this.setAttribute("uv",new Fe(m,2))}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new Ta(t.width,t.height,t.widthSegments,t.heightSegments)}}class Kl extends hn{constructor(t=1,e=32,i=16,s=0,r=Math.PI*2,a=0,o=Math.PI){super(),this.type="SphereGeometry",this.parameters={radius:t,widthSegments:e,heightSegments:i,phiStart:s,phiLength:r,thetaStart:a,thetaLength:o},e=Math.max(3,Math.floor(e)),i=Math.max(2,Math.floor(i));const l=Math.min(a+o,Math.PI);let c=0;const h=[],d=new I,u=new I,f=[],g=[],S=[],m=[];for(let p=0;p<=i;p++){const x=[],y=p/i,v=a+y*o,M=t*Math.cos(v),A=Math.sqrt(t*t-M*M);let _=0;p===0&&a===0?_=.5/e:p===i&&l===Math.PI&&(_=-.5/e);for(let E=0;E<=e;E++){const D=E/e,w=s+D*r;d.x=-A*Math.cos(w),d.y=M,d.z=A*Math.sin(w),g.push(d.x,d.y,d.z),u.copy(d).normalize(),S.push(u.x,u.y,u.z),m.push(D+_,1-y),x.push(c++)}h.push(x)}for(let p=0;p<i;p++)for(let x=0;x<e;x++){const y=h[p][x+1],v=h[p][x],M=h[p+1][x],A=h[p+1][x+1];(p!==0||a>0)&&f.push(y,v,A),(p!==i-1||l<Math.PI)&&f.push(v,M,A)}this.setIndex(f),this.setAttribute("position",new Fe(g,3)),this.setAttribute("normal",new Fe(S,3)),this.setAttribute("uv",new Fe(m,2))}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new Kl(t.radius,t.widthSegments,t.heightSegments,t.phiStart,t.phiLength,t.thetaStart,t.thetaLength)}}function vs(n){const t={};for(const e in n){t[e]={};for(const i in n[e]){const s=n[e][i];if(ru(s))s.isRenderTargetTexture?(Lt("UniformsUtils: Textures of render targets cannot be cloned via cloneUniforms() or mergeUniforms()."),t[e][i]=null):t[e][i]=s.clone();else if(Array.isArray(s))if(ru(s[0])){const r=[];for(let a=0,o=s.length;a<o;a++)r[a]=s[a].clone();t[e][i]=r}else t[e][i]=s.slice();else t[e][i]=s}}return t}function Je(n){const t={};for(let e=0;e<n.length;e++){const i=vs(n[e]);for(const s in i)t[s]=i[s]}return t}function ru(n){return n&&(n.isColor||n.isMatrix3||n.isMatrix4||n.isVector2||n.isVector3||n.isVector4||n.isTexture||n.isQuaternion)}function bp(n){const t=[];for(let e=0;e<n.length;e++)t.push(n[e].clone());return t}function cd(n){const t=n.getRenderTarget();return t===null?n.outputColorSpace:t.isXRRenderTarget===!0?t.texture.colorSpace:qt.workingColorSpace}const Tp={clone:vs,merge:Je};var wp=`void main() {
	gl_Position = projectionMatrix * modelViewMatrix * vec4( position, 1.0 );
}`,Ap=`void main() {
	gl_FragColor = vec4( 1.0, 0.0, 0.0, 1.0 );
}`;class ii extends Ss{constructor(t){super(),this.isShaderMaterial=!0,this.type="ShaderMaterial",this.defines={},this.uniforms={},this.uniformsGroups=[],this.vertexShader=wp,this.fragmentShader=Ap,this.linewidth=1,this.wireframe=!1,this.wireframeLinewidth=1,this.fog=!1,this.lights=!1,this.clipping=!1,this.forceSinglePass=!0,this.extensions={clipCullDistance:!1,multiDraw:!1},this.defaultAttributeValues={color:[1,1,1],uv:[0,0],uv1:[0,0]},this.index0AttributeName=void 0,this.uniformsNeedUpdate=!1,this.glslVersion=null,t!==void 0&&this.setValues(t)}copy(t){return super.copy(t),this.fragmentShader=t.fragmentShader,this.vertexShader=t.vertexShader,this.uniforms=vs(t.uniforms),this.uniformsGroups=bp(t.uniformsGroups),this.defines=Object.assign({},t.defines),this.wireframe=t.wireframe,this.wireframeLinewidth=t.wireframeLinewidth,this.fog=t.fog,this.lights=t.lights,this.clipping=t.clipping,this.extensions=Object.assign({},t.extensions),this.glslVersion=t.glslVersion,this.defaultAttributeValues=Object.assign({},t.defaultAttributeValues),this.index0AttributeName=t.index0AttributeName,this.uniformsNeedUpdate=t.uniformsNeedUpdate,this}toJSON(t){const e=super.toJSON(t);e.glslVersion=this.glslVersion,e.uniforms={};for(const s in this.uniforms){const a=this.uniforms[s].value;a&&a.isTexture?e.uniforms[s]={type:"t",value:a.toJSON(t).uuid}:a&&a.isColor?e.uniforms[s]={type:"c",value:a.getHex()}:a&&a.isVector2?e.uniforms[s]={type:"v2",value:a.toArray()}:a&&a.isVector3?e.uniforms[s]={type:"v3",value:a.toArray()}:a&&a.isVector4?e.uniforms[s]={type:"v4",value:a.toArray()}:a&&a.isMatrix3?e.uniforms[s]={type:"m3",value:a.toArray()}:a&&a.isMatrix4?e.uniforms[s]={type:"m4",value:a.toArray()}:e.uniforms[s]={value:a}}Object.keys(this.defines).length>0&&(e.defines=this.defines),e.vertexShader=this.vertexShader,e.fragmentShader=this.fragmentShader,e.lights=this.lights,e.clipping=this.clipping;const i={};for(const s in this.extensions)this.extensions[s]===!0&&(i[s]=!0);return Object.keys(i).length>0&&(e.extensions=i),e}fromJSON(t,e){if(super.fromJSON(t,e),t.uniforms!==void 0)for(const i in t.uniforms){const s=t.uniforms[i];switch(this.uniforms[i]={},s.type){case"t":this.uniforms[i].value=e[s.value]||null;break;case"c":this.uniforms[i].value=new Xt().setHex(s.value);break;case"v2":this.uniforms[i].value=new Rt().fromArray(s.value);break;case"v3":this.uniforms[i].value=new I().fromArray(s.value);break;case"v4":this.uniforms[i].value=new fe().fromArray(s.value);break;case"m3":this.uniforms[i].value=new Ft().fromArray(s.value);break;case"m4":this.uniforms[i].value=new $t().fromArray(s.value);break;default:this.uniforms[i].value=s.value}}if(t.defines!==void 0&&(this.defines=t.defines),t.vertexShader!==void 0&&(this.vertexShader=t.vertexShader),t.fragmentShader!==void 0&&(this.fragmentShader=t.fragmentShader),t.glslVersion!==void 0&&(this.glslVersion=t.glslVersion),t.extensions!==void 0)for(const i in t.extensions)this.extensions[i]=t.extensions[i];return t.lights!==void 0&&(this.lights=t.lights),t.clipping!==void 0&&(this.clipping=t.clipping),this}}class Rp extends ii{constructor(t){super(t),this.isRawShaderMaterial=!0,this.type="RawShaderMaterial"}}class Cp extends Ss{constructor(t){super(),this.isMeshLambertMaterial=!0,this.type="MeshLambertMaterial",this.color=new Xt(16777215),this.map=null,this.lightMap=null,this.lightMapIntensity=1,this.aoMap=null,this.aoMapIntensity=1,this.emissive=new Xt(0),this.emissiveIntensity=1,this.emissiveMap=null,this.bumpMap=null,this.bumpScale=1,this.normalMap=null,this.normalMapType=ml,this.normalScale=new Rt(1,1),this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.specularMap=null,this.alphaMap=null,this.envMap=null,this.envMapRotation=new yi,this.combine=Ol,this.reflectivity=1,this.envMapIntensity=1,this.refractionRatio=.98,this.wireframe=!1,this.wireframeLinewidth=1,this.wireframeLinecap="round",this.wireframeLinejoin="round",this.flatShading=!1,this.fog=!0,this.setValues(t)}copy(t){return super.copy(t),this.color.copy(t.color),this.map=t.map,this.lightMap=t.lightMap,this.lightMapIntensity=t.lightMapIntensity,this.aoMap=t.aoMap,this.aoMapIntensity=t.aoMapIntensity,this.emissive.copy(t.emissive),this.emissiveMap=t.emissiveMap,this.emissiveIntensity=t.emissiveIntensity,this.bumpMap=t.bumpMap,this.bumpScale=t.bumpScale,this.normalMap=t.normalMap,this.normalMapType=t.normalMapType,this.normalScale.copy(t.normalScale),this.displacementMap=t.displacementMap,this.displacementScale=t.displacementScale,this.displacementBias=t.displacementBias,this.specularMap=t.specularMap,this.alphaMap=t.alphaMap,this.envMap=t.envMap,this.envMapRotation.copy(t.envMapRotation),this.combine=t.combine,this.reflectivity=t.reflectivity,this.envMapIntensity=t.envMapIntensity,this.refractionRatio=t.refractionRatio,this.wireframe=t.wireframe,this.wireframeLinewidth=t.wireframeLinewidth,this.wireframeLinecap=t.wireframeLinecap,this.wireframeLinejoin=t.wireframeLinejoin,this.flatShading=t.flatShading,this.fog=t.fog,this}}class Pp extends Ss{constructor(t){super(),this.isMeshDepthMaterial=!0,this.type="MeshDepthMaterial",this.depthPacking=Bf,this.map=null,this.alphaMap=null,this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.wireframe=!1,this.wireframeLinewidth=1,this.setValues(t)}copy(t){return super.copy(t),this.depthPacking=t.depthPacking,this.map=t.map,this.alphaMap=t.alphaMap,this.displacementMap=t.displacementMap,this.displacementScale=t.displacementScale,this.displacementBias=t.displacementBias,this.wireframe=t.wireframe,this.wireframeLinewidth=t.wireframeLinewidth,this}}class Lp extends Ss{constructor(t){super(),this.isMeshDistanceMaterial=!0,this.type="MeshDistanceMaterial",this.map=null,this.alphaMap=null,this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.setValues(t)}copy(t){return super.copy(t),this.map=t.map,this.alphaMap=t.alphaMap,this.displacementMap=t.displacementMap,this.displacementScale=t.displacementScale,this.displacementBias=t.displacementBias,this}}class ud extends He{static registerNode(t){this.prototype._lightNode=t}constructor(t,e=1){super(),this.isLight=!0,this.type="Light",this.color=new Xt(t),this.intensity=e}copy(t,e){return super.copy(t,e),this.color.copy(t.color),this.intensity=t.intensity,this}toJSON(t){const e=super.toJSON(t);return e.object.color=this.color.getHex(),e.object.intensity=this.intensity,e}}const ao=new $t,au=new I,ou=new I;class Dp{constructor(t){this.camera=t,this.intensity=1,this.bias=0,this.biasNode=null,this.normalBias=0,this.radius=1,this.blurSamples=8,this.mapSize=new Rt(512,512),this.mapType=ln,this.map=null,this.mapPass=null,this.matrix=new $t,this.autoUpdate=!0,this.needsUpdate=!1,this._frustum=new $s,this._frameExtents=new Rt(1,1),this._viewportCount=1,this._viewports=[new fe(0,0,1,1)]}getViewportCount(){return this._viewportCount}getCamera(){return this.camera}getFrustum(){return this._frustum}updateMatrices(t){const e=this.camera;au.setFromMatrixPosition(t.matrixWorld),e.position.copy(au),ou.setFromMatrixPosition(t.target.matrixWorld),e.lookAt(ou),e.updateMatrixWorld(),this._updateMatrix(e,this.matrix,this._frustum)}_updateMatrix(t,e,i,s){ao.multiplyMatrices(t.projectionMatrix,t.matrixWorldInverse),i.setFromProjectionMatrix(ao,t.coordinateSystem,t.reversedDepth);const r=this._frameExtents,a=s?s.z/r.x:1,o=s?s.w/r.y:1,l=s?s.x/r.x:0,c=s?s.y/r.y:0;t.coordinateSystem===qs||t.reversedDepth?e.set(.5*a,0,0,.5*a+l,0,.5*o,0,.5*o+c,0,0,1,0,0,0,0,1):e.set(.5*a,0,0,.5*a+l,0,.5*o,0,.5*o+c,0,0,.5,.5,0,0,0,1),e.multiply(ao)}getViewport(t){return this._viewports[t]}getFrameExtents(){return this._frameExtents}dispose(){this.map&&this.map.dispose(),this.mapPass&&this.mapPass.dispose()}copy(t){return this.camera=t.camera.clone(),this.intensity=t.intensity,this.bias=t.bias,this.radius=t.radius,this.autoUpdate=t.autoUpdate,this.needsUpdate=t.needsUpdate,this.normalBias=t.normalBias,this.blurSamples=t.blurSamples,this.mapSize.copy(t.mapSize),this.mapType=t.mapType,this.biasNode=t.biasNode,this}clone(){return new this.constructor().copy(this)}toJSON(){const t={};return t.intensity=this.intensity,t.bias=this.bias,t.normalBias=this.normalBias,t.radius=this.radius,t.blurSamples=this.blurSamples,t.mapSize=this.mapSize.toArray(),t.mapType=this.mapType,t.camera=this.camera.toJSON(!1).object,delete t.camera.matrix,t}}const br=new I,Tr=new Mi,Nn=new I;class hd extends He{constructor(){super(),this.isCamera=!0,this.type="Camera",this.matrixWorldInverse=new $t,this.projectionMatrix=new $t,this.projectionMatrixInverse=new $t,this.coordinateSystem=Pn,this._reversedDepth=!1}get reversedDepth(){return this._reversedDepth}copy(t,e){return super.copy(t,e),this.matrixWorldInverse.copy(t.matrixWorldInverse),this.projectionMatrix.copy(t.projectionMatrix),this.projectionMatrixInverse.copy(t.projectionMatrixInverse),this.coordinateSystem=t.coordinateSystem,this}getWorldDirection(t){return super.getWorldDirection(t).negate()}updateMatrixWorld(t){super.updateMatrixWorld(t),this.matrixWorld.decompose(br,Tr,Nn),Nn.x===1&&Nn.y===1&&Nn.z===1?this.matrixWorldInverse.copy(this.matrixWorld).invert():this.matrixWorldInverse.compose(br,Tr,Nn.set(1,1,1)).invert()}updateWorldMatrix(t,e,i=!1){super.updateWorldMatrix(t,e,i),this.matrixWorld.decompose(br,Tr,Nn),Nn.x===1&&Nn.y===1&&Nn.z===1?this.matrixWorldInverse.copy(this.matrixWorld).invert():this.matrixWorldInverse.compose(br,Tr,Nn.set(1,1,1)).invert()}clone(){return new this.constructor().copy(this)}}const hi=new I,lu=new Rt,cu=new Rt;class Cn extends hd{constructor(t=50,e=1,i=.1,s=2e3){super(),this.isPerspectiveCamera=!0,this.type="PerspectiveCamera",this.fov=t,this.zoom=1,this.near=i,this.far=s,this.focus=10,this.aspect=e,this.view=null,this.filmGauge=35,this.filmOffset=0,this.updateProjectionMatrix()}copy(t,e){return super.copy(t,e),this.fov=t.fov,this.zoom=t.zoom,this.near=t.near,this.far=t.far,this.focus=t.focus,this.aspect=t.aspect,this.view=t.view===null?null:Object.assign({},t.view),this.filmGauge=t.filmGauge,this.filmOffset=t.filmOffset,this}setFocalLength(t){const e=.5*this.getFilmHeight()/t;this.fov=_l*2*Math.atan(e),this.updateProjectionMatrix()}getFocalLength(){const t=Math.tan(ra*.5*this.fov);return .5*this.getFilmHeight()/t}getEffectiveFOV(){return _l*2*Math.atan(Math.tan(ra*.5*this.fov)/this.zoom)}getFilmWidth(){return this.filmGauge*Math.min(this.aspect,1)}getFilmHeight(){return this.filmGauge/Math.max(this.aspect,1)}getViewBounds(t,e,i){hi.set(-1,-1,.5).applyMatrix4(this.projectionMatrixInverse),e.set(hi.x,hi.y).multiplyScalar(-t/hi.z),hi.set(1,1,.5).applyMatrix4(this.projectionMatrixInverse),i.set(hi.x,hi.y).multiplyScalar(-t/hi.z)}getViewSize(t,e){return this.getViewBounds(t,lu,cu),e.subVectors(cu,lu)}setViewOffset(t,e,i,s,r,a){this.aspect=t/e,this.view===null&&(this.view={enabled:!0,fullWidth:1,fullHeight:1,offsetX:0,offsetY:0,width:1,height:1}),this.view.enabled=!0,this.view.fullWidth=t,this.view.fullHeight=e,this.view.offsetX=i,this.view.offsetY=s,this.view.width=r,this.view.height=a,this.updateProjectionMatrix()}clearViewOffset(){this.view!==null&&(this.view.enabled=!1),this.updateProjectionMatrix()}updateProjectionMatrix(){const t=this.near;let e=t*Math.tan(ra*.5*this.fov)/this.zoom,i=2*e,s=this.aspect*i,r=-.5*s;const a=this.view;if(this.view!==null&&this.view.enabled){const l=a.fullWidth,c=a.fullHeight;r+=a.offsetX*s/l,e-=a.offsetY*i/c,s*=a.width/l,i*=a.height/c}const o=this.filmOffset;o!==0&&(r+=t*o/this.getFilmWidth()),this.projectionMatrix.makePerspective(r,r+s,e,e-i,t,this.far,this.coordinateSystem,this.reversedDepth),this.projectionMatrixInverse.copy(this.projectionMatrix).invert()}toJSON(t){const e=super.toJSON(t);return e.object.fov=this.fov,e.object.zoom=this.zoom,e.object.near=this.near,e.object.far=this.far,e.object.focus=this.focus,e.object.aspect=this.aspect,this.view!==null&&(e.object.view=Object.assign({},this.view)),e.object.filmGauge=this.filmGauge,e.object.filmOffset=this.filmOffset,e}}class dd extends hd{constructor(t=-1,e=1,i=1,s=-1,r=.1,a=2e3){super(),this.isOrthographicCamera=!0,this.type="OrthographicCamera",this.zoom=1,this.view=null,this.left=t,this.right=e,this.top=i,this.bottom=s,this.near=r,this.far=a,this.updateProjectionMatrix()}copy(t,e){return super.copy(t,e),this.left=t.left,this.right=t.right,this.top=t.top,this.bottom=t.bottom,this.near=t.near,this.far=t.far,this.zoom=t.zoom,this.view=t.view===null?null:Object.assign({},t.view),this}setViewOffset(t,e,i,s,r,a){this.view===null&&(this.view={enabled:!0,fullWidth:1,fullHeight:1,offsetX:0,offsetY:0,width:1,height:1}),this.view.enabled=!0,this.view.fullWidth=t,this.view.fullHeight=e,this.view.offsetX=i,this.view.offsetY=s,this.view.width=r,this.view.height=a,this.updateProjectionMatrix()}clearViewOffset(){this.view!==null&&(this.view.enabled=!1),this.updateProjectionMatrix()}updateProjectionMatrix(){const t=(this.right-this.left)/(2*this.zoom),e=(this.top-this.bottom)/(2*this.zoom),i=(this.right+this.left)/2,s=(this.top+this.bottom)/2;let r=i-t,a=i+t,o=s+e,l=s-e;if(this.view!==null&&this.view.enabled){const c=(this.right-this.left)/this.view.fullWidth/this.zoom,h=(this.top-this.bottom)/this.view.fullHeight/this.zoom;r+=c*this.view.offsetX,a=r+c*this.view.width,o-=h*this.view.offsetY,l=o-h*this.view.height}this.projectionMatrix.makeOrthographic(r,a,o,l,this.near,this.far,this.coordinateSystem,this.reversedDepth),this.projectionMatrixInverse.copy(this.projectionMatrix).invert()}toJSON(t){const e=super.toJSON(t);return e.object.zoom=this.zoom,e.object.left=this.left,e.object.right=this.right,e.object.top=this.top,e.object.bottom=this.bottom,e.object.near=this.near,e.object.far=this.far,this.view!==null&&(e.object.view=Object.assign({},this.view)),e}}class Np extends Dp{constructor(){super(new dd(-5,5,5,-5,.5,500)),this.isDirectionalLightShadow=!0}}class Ip extends ud{constructor(t,e){super(t,e),this.isDirectionalLight=!0,this.type="DirectionalLight",this.position.copy(He.DEFAULT_UP),this.updateMatrix(),this.target=new He,this.shadow=new Np}dispose(){super.dispose(),this.shadow.dispose()}copy(t){return super.copy(t),this.target=t.target.clone(),this.shadow=t.shadow.clone(),this}toJSON(t){const e=super.toJSON(t);return e.object.shadow=this.shadow.toJSON(),e.object.target=this.target.uuid,e}}class Up extends ud{constructor(t,e){super(t,e),this.isAmbientLight=!0,this.type="AmbientLight"}}const Ki=-90,Zi=1;class xl extends He{constructor(t,e,i){super(),this.type="CubeCamera",this.renderTarget=i,this.coordinateSystem=null,this.activeMipmapLevel=0;const s=new Cn(Ki,Zi,t,e);s.layers=this.layers,this.add(s);const r=new Cn(Ki,Zi,t,e);r.layers=this.layers,this.add(r);const a=new Cn(Ki,Zi,t,e);a.layers=this.layers,this.add(a);const o=new Cn(Ki,Zi,t,e);o.layers=this.layers,this.add(o);const l=new Cn(Ki,Zi,t,e);l.layers=this.layers,this.add(l);const c=new Cn(Ki,Zi,t,e);c.layers=this.layers,this.add(c)}updateCoordinateSystem(){const t=this.coordinateSystem,e=this.children.concat(),[i,s,r,a,o,l]=e;for(const c of e)this.remove(c);if(t===Pn)i.up.set(0,1,0),i.lookAt(1,0,0),s.up.set(0,1,0),s.lookAt(-1,0,0),r.up.set(0,0,-1),r.lookAt(0,1,0),a.up.set(0,0,1),a.lookAt(0,-1,0),o.up.set(0,1,0),o.lookAt(0,0,1),l.up.set(0,1,0),l.lookAt(0,0,-1);else if(t===qs)i.up.set(0,-1,0),i.lookAt(-1,0,0),s.up.set(0,-1,0),s.lookAt(1,0,0),r.up.set(0,0,1),r.lookAt(0,1,0),a.up.set(0,0,-1),a.lookAt(0,-1,0),o.up.set(0,-1,0),o.lookAt(0,0,1),l.up.set(0,-1,0),l.lookAt(0,0,-1);else throw new Error("THREE.CubeCamera.updateCoordinateSystem(): Invalid coordinate system: "+t);for(const c of e)this.add(c),c.updateMatrixWorld()}update(t,e){this.parent===null&&this.updateMatrixWorld();const{renderTarget:i,activeMipmapLevel:s}=this;this.coordinateSystem!==t.coordinateSystem&&(this.coordinateSystem=t.coordinateSystem,this.updateCoordinateSystem());const[r,a,o,l,c,h]=this.children,d=t.getRenderTarget(),u=t.getActiveCubeFace(),f=t.getActiveMipmapLevel(),g=t.xr.enabled;t.xr.enabled=!1;const S=i.texture.mipmapsAutoUpdate;i.texture.mipmapsAutoUpdate=!1;let m=!1;t.isWebGLRenderer===!0?m=t.state.buffers.depth.getReversed():m=t.reversedDepthBuffer,t.setRenderTarget(i,0,s),m&&t.autoClear===!1&&t.clearDepth(),t.render(e,r),t.setRenderTarget(i,1,s),m&&t.autoClear===!1&&t.clearDepth(),t.render(e,a),t.setRenderTarget(i,2,s),m&&t.autoClear===!1&&t.clearDepth(),t.render(e,o),t.setRenderTarget(i,3,s),m&&t.autoClear===!1&&t.clearDepth(),t.render(e,l),t.setRenderTarget(i,4,s),m&&t.autoClear===!1&&t.clearDepth(),t.render(e,c),i.texture.mipmapsAutoUpdate=S,t.setRenderTarget(i,5,s),m&&t.autoClear===!1&&t.clearDepth(),t.render(e,h),t.setRenderTarget(d,u,f),t.xr.enabled=g,i.texture.needsPMREMUpdate=!0}}class Fp extends Cn{constructor(t=[]){super(),this.isArrayCamera=!0,this.isMultiViewCamera=!1,this.cameras=t,this.perCameraFrustumCulled=!1}}const uu=new $t;class Op{constructor(t,e,i=0,s=1/0){this.ray=new Js(t,e),this.near=i,this.far=s,this.camera=null,this.layers=new Xl,this.params={Mesh:{},Line:{threshold:1},LOD:{},Points:{threshold:1},Sprite:{}}}set(t,e){this.ray.set(t,e)}setFromCamera(t,e){e.isPerspectiveCamera?(this.ray.origin.setFromMatrixPosition(e.matrixWorld),this.ray.direction.set(t.x,t.y,.5).unproject(e).sub(this.ray.origin).normalize(),this.camera=e):e.isOrthographicCamera?(this.ray.origin.set(t.x,t.y,e.projectionMatrix.elements[14]).unproject(e),this.ray.direction.set(0,0,-1).transformDirection(e.matrixWorld),this.camera=e):Zt("Raycaster: Unsupported camera type: "+e.type)}setFromXRController(t){return uu.identity().extractRotation(t.matrixWorld),this.ray.origin.setFromMatrixPosition(t.matrixWorld),this.ray.direction.set(0,0,-1).applyMatrix4(uu),this}intersectObject(t,e=!0,i=[]){return vl(t,this,i,e),i.sort(hu),i}intersectObjects(t,e=!0,i=[]){for(let s=0,r=t.length;s<r;s++)vl(t[s],this,i,e);return i.sort(hu),i}}function hu(n,t){return n.distance-t.distance}function vl(n,t,e,i){let s=!0;if(n.layers.test(t.layers)&&n.raycast(t,e)===!1&&(s=!1),s===!0&&i===!0){const r=n.children;for(let a=0,o=r.length;a<o;a++)vl(r[a],t,e,!0)}}class du{constructor(t=1,e=0,i=0){this.radius=t,this.phi=e,this.theta=i}set(t,e,i){return this.radius=t,this.phi=e,this.theta=i,this}copy(t){return this.radius=t.radius,this.phi=t.phi,this.theta=t.theta,this}makeSafe(){return this.phi=Ot(this.phi,1e-6,Math.PI-1e-6),this}setFromVector3(t){return this.setFromCartesianCoords(t.x,t.y,t.z)}setFromCartesianCoords(t,e,i){return this.radius=Math.sqrt(t*t+e*e+i*i),this.radius===0?(this.theta=0,this.phi=0):(this.theta=Math.atan2(t,i),this.phi=Math.acos(Ot(e/this.radius,-1,1))),this}clone(){return new this.constructor().copy(this)}}const fu=new I,wr=new I,Ji=new I,Qi=new I,oo=new I,Bp=new I,zp=new I;class Vn{constructor(t=new I,e=new I){this.start=t,this.end=e}set(t,e){return this.start.copy(t),this.end.copy(e),this}copy(t){return this.start.copy(t.start),this.end.copy(t.end),this}getCenter(t){return t.addVectors(this.start,this.end).multiplyScalar(.5)}delta(t){return t.subVectors(this.end,this.start)}distanceSq(){return this.start.distanceToSquared(this.end)}distance(){return this.start.distanceTo(this.end)}at(t,e){return this.delta(e).multiplyScalar(t).add(this.start)}closestPointToPointParameter(t,e){fu.subVectors(t,this.start),wr.subVectors(this.end,this.start);const i=wr.dot(wr);if(i===0)return 0;let r=wr.dot(fu)/i;return e&&(r=Ot(r,0,1)),r}closestPointToPoint(t,e,i){const s=this.closestPointToPointParameter(t,e);return this.delta(i).multiplyScalar(s).add(this.start)}distanceSqToLine3(t,e=Bp,i=zp){const s=10000000000000001e-32;let r,a;const o=this.start,l=t.start,c=this.end,h=t.end;Ji.subVectors(c,o),Qi.subVectors(h,l),oo.subVectors(o,l);const d=Ji.dot(Ji),u=Qi.dot(Qi),f=Qi.dot(oo);if(d<=s&&u<=s)return e.copy(o),i.copy(l),e.distanceToSquared(i);if(d<=s)r=0,a=f/u,a=Ot(a,0,1);else{const g=Ji.dot(oo);if(u<=s)a=0,r=Ot(-g/d,0,1);else{const S=Ji.dot(Qi),m=d*u-S*S;m!==0?r=Ot((S*f-g*u)/m,0,1):r=0,a=(S*r+f)/u,a<0?(a=0,r=Ot(-g/d,0,1)):a>1&&(a=1,r=Ot((S-g)/d,0,1))}}return e.copy(o).addScaledVector(Ji,r),i.copy(l).addScaledVector(Qi,a),e.distanceToSquared(i)}applyMatrix4(t){return this.start.applyMatrix4(t),this.end.applyMatrix4(t),this}equals(t){return t.start.equals(this.start)&&t.end.equals(this.end)}clone(){return new this.constructor().copy(this)}}class kp extends Ei{constructor(t,e=null){super(),this.object=t,this.domElement=e,this.enabled=!0,this.state=-1,this.keys={},this.mouseButtons={LEFT:null,MIDDLE:null,RIGHT:null},this.touches={ONE:null,TWO:null}}connect(t){this.domElement!==null&&this.disconnect(),this.domElement=t}disconnect(){}dispose(){}update(){}}function pu(n,t,e,i){const s=Hp(i);switch(e){case Wh:return n*t;case qh:return n*t/s.components*s.byteLength;case Hl:return n*t/s.components*s.byteLength;case Oi:return n*t*2/s.components*s.byteLength;case Gl:return n*t*2/s.components*s.byteLength;case Xh:return n*t*3/s.components*s.byteLength;case zn:return n*t*4/s.components*s.byteLength;case Vl:return n*t*4/s.components*s.byteLength;case ta:case ea:return Math.floor((n+3)/4)*Math.floor((t+3)/4)*8;case na:case ia:return Math.floor((n+3)/4)*Math.floor((t+3)/4)*16;case ko:case Go:return Math.max(n,16)*Math.max(t,8)/4;case zo:case Ho:return Math.max(n,8)*Math.max(t,8)/2;case Vo:case Wo:case qo:case $o:return Math.floor((n+3)/4)*Math.floor((t+3)/4)*8;case Xo:case fa:case Yo:return Math.floor((n+3)/4)*Math.floor((t+3)/4)*16;case Ko:return Math.floor((n+3)/4)*Math.floor((t+3)/4)*16;case Zo:return Math.floor((n+4)/5)*Math.floor((t+3)/4)*16;case Jo:return Math.floor((n+4)/5)*Math.floor((t+4)/5)*16;case Qo:return Math.floor((n+5)/6)*Math.floor((t+4)/5)*16;case jo:return Math.floor((n+5)/6)*Math.floor((t+5)/6)*16;case tl:return Math.floor((n+7)/8)*Math.floor((t+4)/5)*16;case el:return Math.floor((n+7)/8)*Math.floor((t+5)/6)*16;case nl:return Math.floor((n+7)/8)*Math.floor((t+7)/8)*16;case il:return Math.floor((n+9)/10)*Math.floor((t+4)/5)*16;case sl:return Math.floor((n+9)/10)*Math.floor((t+5)/6)*16;case rl:return Math.floor((n+9)/10)*Math.floor((t+7)/8)*16;case al:return Math.floor((n+9)/10)*Math.floor((t+9)/10)*16;case ol:return Math.floor((n+11)/12)*Math.floor((t+9)/10)*16;case ll:return Math.floor((n+11)/12)*Math.floor((t+11)/12)*16;case cl:case ul:case hl:return Math.ceil(n/4)*Math.ceil(t/4)*16;case dl:case fl:return Math.ceil(n/4)*Math.ceil(t/4)*8;case pa:case pl:return Math.ceil(n/4)*Math.ceil(t/4)*16}throw new Error(`Unable to determine texture byte length for ${e} format.`)}function Hp(n){switch(n){case ln:case kh:return{byteLength:1,components:1};case Xs:case Hh:case Gn:return{byteLength:2,components:1};case zl:case kl:return{byteLength:2,components:4};case Hn:case Bl:case Bn:return{byteLength:4,components:1};case Gh:case Vh:return{byteLength:4,components:3}}throw new Error(`THREE.TextureUtils: Unknown texture type ${n}.`)}typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("register",{detail:{revision:Ks}}));typeof window<"u"&&(window.__THREE__?Lt("WARNING: Multiple instances of Three.js being imported."):window.__THREE__=Ks);function fd(){let n=null,t=!1,e=null,i=null;function s(r,a){i=n.requestAnimationFrame(s),e(r,a)}return{start:function(){t!==!0&&e!==null&&n!==null&&(i=n.requestAnimationFrame(s),t=!0)},stop:function(){n!==null&&n.cancelAnimationFrame(i),t=!1},setAnimationLoop:function(r){e=r},setContext:function(r){n=r}}}function Gp(n){const t=new WeakMap;function e(o,l){const c=o.array,h=o.usage,d=c.byteLength,u=n.createBuffer();n.bindBuffer(l,u),n.bufferData(l,c,h),o.onUploadCallback();let f;if(c instanceof Float32Array)f=n.FLOAT;else if(typeof Float16Array<"u"&&c instanceof Float16Array)f=n.HALF_FLOAT;else if(c instanceof Uint16Array)o.isFloat16BufferAttribute?f=n.HALF_FLOAT:f=n.UNSIGNED_SHORT;else if(c instanceof Int16Array)f=n.SHORT;else if(c instanceof Uint32Array)f=n.UNSIGNED_INT;else if(c instanceof Int32Array)f=n.INT;else if(c instanceof Int8Array)f=n.BYTE;else if(c instanceof Uint8Array)f=n.UNSIGNED_BYTE;else if(c instanceof Uint8ClampedArray)f=n.UNSIGNED_BYTE;else throw new Error("THREE.WebGLAttributes: Unsupported buffer data format: "+c);return{buffer:u,type:f,bytesPerElement:c.BYTES_PER_ELEMENT,version:o.version,size:d}}function i(o,l,c){const h=l.array,d=l.updateRanges;if(n.bindBuffer(c,o),d.length===0)n.bufferSubData(c,0,h);else{d.sort((f,g)=>f.start-g.start);let u=0;for(let f=1;f<d.length;f++){const g=d[u],S=d[f];S.start<=g.start+g.count+1?g.count=Math.max(g.count,S.start+S.count-g.start):(++u,d[u]=S)}d.length=u+1;for(let f=0,g=d.length;f<g;f++){const S=d[f];n.bufferSubData(c,S.start*h.BYTES_PER_ELEMENT,h,S.start,S.count)}l.clearUpdateRanges()}l.onUploadCallback()}function s(o){return o.isInterleavedBufferAttribute&&(o=o.data),t.get(o)}function r(o){o.isInterleavedBufferAttribute&&(o=o.data);const l=t.get(o);l&&(n.deleteBuffer(l.buffer),t.delete(o))}function a(o,l){if(o.isInterleavedBufferAttribute&&(o=o.data),o.isGLBufferAttribute){const h=t.get(o);(!h||h.version<o.version)&&t.set(o,{buffer:o.buffer,type:o.type,bytesPerElement:o.elementSize,version:o.version});return}const c=t.get(o);if(c===void 0)t.set(o,e(o,l));else if(c.version<o.version){if(c.size!==o.array.byteLength)throw new Error("THREE.WebGLAttributes: The size of the buffer attribute's array buffer does not match the original size. Resizing buffer attributes is not supported.");i(c.buffer,o,l),c.version=o.version}}return{get:s,remove:r,update:a}}var Vp=`#ifdef USE_ALPHAHASH
	if ( diffuseColor.a < getAlphaHashThreshold( vPosition ) ) discard;
#endif`,Wp=`#ifdef USE_ALPHAHASH
	const float ALPHA_HASH_SCALE = 0.05;
	float hash2D( vec2 value ) {
		return fract( 1.0e4 * sin( 17.0 * value.x + 0.1 * value.y ) * ( 0.1 + abs( sin( 13.0 * value.y + value.x ) ) ) );
	}
	float hash3D( vec3 value ) {
		return hash2D( vec2( hash2D( value.xy ), value.z ) );
	}
	float getAlphaHashThreshold( vec3 position ) {
		float maxDeriv = max(
			length( dFdx( position.xyz ) ),
			length( dFdy( position.xyz ) )
		);
		float pixScale = 1.0 / ( ALPHA_HASH_SCALE * maxDeriv );
		vec2 pixScales = vec2(
			exp2( floor( log2( pixScale ) ) ),
			exp2( ceil( log2( pixScale ) ) )
		);
		vec2 alpha = vec2(
			hash3D( floor( pixScales.x * position.xyz ) ),
			hash3D( floor( pixScales.y * position.xyz ) )
		);
		float lerpFactor = fract( log2( pixScale ) );
		float x = ( 1.0 - lerpFactor ) * alpha.x + lerpFactor * alpha.y;
		float a = min( lerpFactor, 1.0 - lerpFactor );
		vec3 cases = vec3(
			x * x / ( 2.0 * a * ( 1.0 - a ) ),
			( x - 0.5 * a ) / ( 1.0 - a ),
			1.0 - ( ( 1.0 - x ) * ( 1.0 - x ) / ( 2.0 * a * ( 1.0 - a ) ) )
		);
		float threshold = ( x < ( 1.0 - a ) )
			? ( ( x < a ) ? cases.x : cases.y )
			: cases.z;
		return clamp( threshold , 1.0e-6, 1.0 );
	}
#endif`,Xp=`#ifdef USE_ALPHAMAP
	diffuseColor.a *= texture2D( alphaMap, vAlphaMapUv ).g;
#endif`,qp=`#ifdef USE_ALPHAMAP
	uniform sampler2D alphaMap;
#endif`,$p=`#ifdef USE_ALPHATEST
	#ifdef ALPHA_TO_COVERAGE
	diffuseColor.a = smoothstep( alphaTest, alphaTest + fwidth( diffuseColor.a ), diffuseColor.a );
	if ( diffuseColor.a == 0.0 ) discard;
	#else
	if ( diffuseColor.a < alphaTest ) discard;
	#endif
#endif`,Yp=`#ifdef USE_ALPHATEST
	uniform float alphaTest;
#endif`,Kp=`#ifdef USE_AOMAP
	float ambientOcclusion = ( texture2D( aoMap, vAoMapUv ).r - 1.0 ) * aoMapIntensity + 1.0;
	reflectedLight.indirectDiffuse *= ambientOcclusion;
	#if defined( USE_CLEARCOAT ) 
		clearcoatSpecularIndirect *= ambientOcclusion;
	#endif
	#if defined( USE_SHEEN ) 
		sheenSpecularIndirect *= ambientOcclusion;
	#endif
	#if defined( USE_ENVMAP ) && defined( STANDARD )
		float dotNV = saturate( dot( geometryNormal, geometryViewDir ) );
		reflectedLight.indirectSpecular *= computeSpecularOcclusion( dotNV, ambientOcclusion, material.roughness );
	#endif
#endif`,Zp=`#ifdef USE_AOMAP
	uniform sampler2D aoMap;
	uniform float aoMapIntensity;
#endif`,Jp=`#ifdef USE_BATCHING
	#if ! defined( GL_ANGLE_multi_draw )
	#define gl_DrawID _gl_DrawID
	uniform int _gl_DrawID;
	#endif
	uniform highp sampler2D batchingTexture;
	uniform highp usampler2D batchingIdTexture;
	mat4 getBatchingMatrix( const in float i ) {
		int size = textureSize( batchingTexture, 0 ).x;
		int j = int( i ) * 4;
		int x = j % size;
		int y = j / size;
		vec4 v1 = texelFetch( batchingTexture, ivec2( x, y ), 0 );
		vec4 v2 = texelFetch( batchingTexture, ivec2( x + 1, y ), 0 );
		vec4 v3 = texelFetch( batchingTexture, ivec2( x + 2, y ), 0 );
		vec4 v4 = texelFetch( batchingTexture, ivec2( x + 3, y ), 0 );
		return mat4( v1, v2, v3, v4 );
	}
	float getIndirectIndex( const in int i ) {
		int size = textureSize( batchingIdTexture, 0 ).x;
		int x = i % size;
		int y = i / size;
		return float( texelFetch( batchingIdTexture, ivec2( x, y ), 0 ).r );
	}
#endif
#ifdef USE_BATCHING_COLOR
	uniform sampler2D batchingColorTexture;
	vec4 getBatchingColor( const in float i ) {
		int size = textureSize( batchingColorTexture, 0 ).x;
		int j = int( i );
		int x = j % size;
		int y = j / size;
		return texelFetch( batchingColorTexture, ivec2( x, y ), 0 );
	}
#endif`,Qp=`#ifdef USE_BATCHING
	mat4 batchingMatrix = getBatchingMatrix( getIndirectIndex( gl_DrawID ) );
#endif`,jp=`vec3 transformed = vec3( position );
#ifdef USE_ALPHAHASH
	vPosition = vec3( position );
#endif`,tm=`vec3 objectNormal = vec3( normal );
#ifdef USE_TANGENT
	vec3 objectTangent = vec3( tangent.xyz );
#endif`,em=`float G_BlinnPhong_Implicit( ) {
	return 0.25;
}
float D_BlinnPhong( const in float shininess, const in float dotNH ) {
	return RECIPROCAL_PI * ( shininess * 0.5 + 1.0 ) * pow( dotNH, shininess );
}
vec3 BRDF_BlinnPhong( const in vec3 lightDir, const in vec3 viewDir, const in vec3 normal, const in vec3 specularColor, const in float shininess ) {
	vec3 halfDir = normalize( lightDir + viewDir );
	float dotNH = saturate( dot( normal, halfDir ) );
	float dotVH = saturate( dot( viewDir, halfDir ) );
	vec3 F = F_Schlick( specularColor, 1.0, dotVH );
	float G = G_BlinnPhong_Implicit( );
	float D = D_BlinnPhong( shininess, dotNH );
	return F * ( G * D );
} // validated`,nm=`#ifdef USE_IRIDESCENCE
	const mat3 XYZ_TO_REC709 = mat3(
		 3.2404542, -0.9692660,  0.0556434,
		-1.5371385,  1.8760108, -0.2040259,
		-0.4985314,  0.0415560,  1.0572252
	);
	vec3 Fresnel0ToIor( vec3 fresnel0 ) {
		vec3 sqrtF0 = sqrt( fresnel0 );
		return ( vec3( 1.0 ) + sqrtF0 ) / ( vec3( 1.0 ) - sqrtF0 );
	}
	vec3 IorToFresnel0( vec3 transmittedIor, float incidentIor ) {
		return pow2( ( transmittedIor - vec3( incidentIor ) ) / ( transmittedIor + vec3( incidentIor ) ) );
	}
	float IorToFresnel0( float transmittedIor, float incidentIor ) {
		return pow2( ( transmittedIor - incidentIor ) / ( transmittedIor + incidentIor ));
	}
	vec3 evalSensitivity( float OPD, vec3 shift ) {
		float phase = 2.0 * PI * OPD * 1.0e-9;
		vec3 val = vec3( 5.4856e-13, 4.4201e-13, 5.2481e-13 );
		vec3 pos = vec3( 1.6810e+06, 1.7953e+06, 2.2084e+06 );
		vec3 var = vec3( 4.3278e+09, 9.3046e+09, 6.6121e+09 );
		vec3 xyz = val * sqrt( 2.0 * PI * var ) * cos( pos * phase + shift ) * exp( - pow2( phase ) * var );
		xyz.x += 9.7470e-14 * sqrt( 2.0 * PI * 4.5282e+09 ) * cos( 2.2399e+06 * phase + shift[ 0 ] ) * exp( - 4.5282e+09 * pow2( phase ) );
		xyz /= 1.0685e-7;
		vec3 rgb = XYZ_TO_REC709 * xyz;
		return rgb;
	}
	vec3 evalIridescence( float outsideIOR, float eta2, float cosTheta1, float thinFilmThickness, vec3 baseF0 ) {
		vec3 I;
		float iridescenceIOR = mix( outsideIOR, eta2, smoothstep( 0.0, 0.03, thinFilmThickness ) );
		float sinTheta2Sq = pow2( outsideIOR / iridescenceIOR ) * ( 1.0 - pow2( cosTheta1 ) );
		float cosTheta2Sq = 1.0 - sinTheta2Sq;
		if ( cosTheta2Sq < 0.0 ) {
			return vec3( 1.0 );
		}
		float cosTheta2 = sqrt( cosTheta2Sq );
		float R0 = IorToFresnel0( iridescenceIOR, outsideIOR );
		float R12 = F_Schlick( R0, 1.0, cosTheta1 );
		float T121 = 1.0 - R12;
		float phi12 = 0.0;
		if ( iridescenceIOR < outsideIOR ) phi12 = PI;
		float phi21 = PI - phi12;
		vec3 baseIOR = Fresnel0ToIor( clamp( baseF0, 0.0, 0.9999 ) );		vec3 R1 = IorToFresnel0( baseIOR, iridescenceIOR );
		vec3 R23 = F_Schlick( R1, 1.0, cosTheta2 );
		vec3 phi23 = vec3( 0.0 );
		if ( baseIOR[ 0 ] < iridescenceIOR ) phi23[ 0 ] = PI;
		if ( baseIOR[ 1 ] < iridescenceIOR ) phi23[ 1 ] = PI;
		if ( baseIOR[ 2 ] < iridescenceIOR ) phi23[ 2 ] = PI;
		float OPD = 2.0 * iridescenceIOR * thinFilmThickness * cosTheta2;
		vec3 phi = vec3( phi21 ) + phi23;
		vec3 R123 = clamp( R12 * R23, 1e-5, 0.9999 );
		vec3 r123 = sqrt( R123 );
		vec3 Rs = pow2( T121 ) * R23 / ( vec3( 1.0 ) - R123 );
		vec3 C0 = R12 + Rs;
		I = C0;
		vec3 Cm = Rs - T121;
		for ( int m = 1; m <= 2; ++ m ) {
			Cm *= r123;
			vec3 Sm = 2.0 * evalSensitivity( float( m ) * OPD, float( m ) * phi );
			I += Cm * Sm;
		}
		return max( I, vec3( 0.0 ) );
	}
#endif`,im=`#ifdef USE_BUMPMAP
	uniform sampler2D bumpMap;
	uniform float bumpScale;
	vec2 dHdxy_fwd() {
		vec2 dSTdx = dFdx( vBumpMapUv );
		vec2 dSTdy = dFdy( vBumpMapUv );
		float Hll = bumpScale * texture2D( bumpMap, vBumpMapUv ).x;
		float dBx = bumpScale * texture2D( bumpMap, vBumpMapUv + dSTdx ).x - Hll;
		float dBy = bumpScale * texture2D( bumpMap, vBumpMapUv + dSTdy ).x - Hll;
		return vec2( dBx, dBy );
	}
	vec3 perturbNormalArb( vec3 surf_pos, vec3 surf_norm, vec2 dHdxy, float faceDirection ) {
		vec3 vSigmaX = normalize( dFdx( surf_pos.xyz ) );
		vec3 vSigmaY = normalize( dFdy( surf_pos.xyz ) );
		vec3 vN = surf_norm;
		vec3 R1 = cross( vSigmaY, vN );
		vec3 R2 = cross( vN, vSigmaX );
		float fDet = dot( vSigmaX, R1 ) * faceDirection;
		vec3 vGrad = sign( fDet ) * ( dHdxy.x * R1 + dHdxy.y * R2 );
		return normalize( abs( fDet ) * surf_norm - vGrad );
	}
#endif`,sm=`#if NUM_CLIPPING_PLANES > 0
	vec4 plane;
	#ifdef ALPHA_TO_COVERAGE
		float distanceToPlane, distanceGradient;
		float clipOpacity = 1.0;
		#pragma unroll_loop_start
		for ( int i = 0; i < UNION_CLIPPING_PLANES; i ++ ) {
			plane = clippingPlanes[ i ];
			distanceToPlane = - dot( vClipPosition, plane.xyz ) + plane.w;
			distanceGradient = fwidth( distanceToPlane ) / 2.0;
			clipOpacity *= smoothstep( - distanceGradient, distanceGradient, distanceToPlane );
			if ( clipOpacity == 0.0 ) discard;
		}
		#pragma unroll_loop_end
		#if UNION_CLIPPING_PLANES < NUM_CLIPPING_PLANES
			float unionClipOpacity = 1.0;
			#pragma unroll_loop_start
			for ( int i = UNION_CLIPPING_PLANES; i < NUM_CLIPPING_PLANES; i ++ ) {
				plane = clippingPlanes[ i ];
				distanceToPlane = - dot( vClipPosition, plane.xyz ) + plane.w;
				distanceGradient = fwidth( distanceToPlane ) / 2.0;
				unionClipOpacity *= 1.0 - smoothstep( - distanceGradient, distanceGradient, distanceToPlane );
			}
			#pragma unroll_loop_end
			clipOpacity *= 1.0 - unionClipOpacity;
		#endif
		diffuseColor.a *= clipOpacity;
		if ( diffuseColor.a == 0.0 ) discard;
	#else
		#pragma unroll_loop_start
		for ( int i = 0; i < UNION_CLIPPING_PLANES; i ++ ) {
			plane = clippingPlanes[ i ];
			if ( dot( vClipPosition, plane.xyz ) > plane.w ) discard;
		}
		#pragma unroll_loop_end
		#if UNION_CLIPPING_PLANES < NUM_CLIPPING_PLANES
			bool clipped = true;
			#pragma unroll_loop_start
			for ( int i = UNION_CLIPPING_PLANES; i < NUM_CLIPPING_PLANES; i ++ ) {
				plane = clippingPlanes[ i ];
				clipped = ( dot( vClipPosition, plane.xyz ) > plane.w ) && clipped;
			}
			#pragma unroll_loop_end
			if ( clipped ) discard;
		#endif
	#endif
#endif`,rm=`#if NUM_CLIPPING_PLANES > 0
	varying vec3 vClipPosition;
	uniform vec4 clippingPlanes[ NUM_CLIPPING_PLANES ];
#endif`,am=`#if NUM_CLIPPING_PLANES > 0
	varying vec3 vClipPosition;
#endif`,om=`#if NUM_CLIPPING_PLANES > 0
	vClipPosition = - mvPosition.xyz;
#endif`,lm=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA )
	diffuseColor *= vColor;
#endif`,cm=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA )
	varying vec4 vColor;
#endif`,um=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA ) || defined( USE_INSTANCING_COLOR ) || defined( USE_BATCHING_COLOR )
	varying vec4 vColor;
#endif`,hm=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA ) || defined( USE_INSTANCING_COLOR ) || defined( USE_BATCHING_COLOR )
	vColor = vec4( 1.0 );
#endif
#ifdef USE_COLOR_ALPHA
	vColor *= color;
#elif defined( USE_COLOR )
	vColor.rgb *= color;
#endif
#ifdef USE_INSTANCING_COLOR
	vColor.rgb *= instanceColor.rgb;
#endif
#ifdef USE_BATCHING_COLOR
	vColor *= getBatchingColor( getIndirectIndex( gl_DrawID ) );
#endif`,dm=`#define PI 3.141592653589793
#define PI2 6.283185307179586
#define PI_HALF 1.5707963267948966
#define RECIPROCAL_PI 0.3183098861837907
#define RECIPROCAL_PI2 0.15915494309189535
#define EPSILON 1e-6
#ifndef saturate
#define saturate( a ) clamp( a, 0.0, 1.0 )
#endif
#define whiteComplement( a ) ( 1.0 - saturate( a ) )
float pow2( const in float x ) { return x*x; }
vec3 pow2( const in vec3 x ) { return x*x; }
float pow3( const in float x ) { return x*x*x; }
float pow4( const in float x ) { float x2 = x*x; return x2*x2; }
float max3( const in vec3 v ) { return max( max( v.x, v.y ), v.z ); }
float average( const in vec3 v ) { return dot( v, vec3( 0.3333333 ) ); }
highp float rand( const in vec2 uv ) {
	const highp float a = 12.9898, b = 78.233, c = 43758.5453;
	highp float dt = dot( uv.xy, vec2( a,b ) ), sn = mod( dt, PI );
	return fract( sin( sn ) * c );
}
#ifdef HIGH_PRECISION
	float precisionSafeLength( vec3 v ) { return length( v ); }
#else
	float precisionSafeLength( vec3 v ) {
		float maxComponent = max3( abs( v ) );
		return length( v / maxComponent ) * maxComponent;
	}
#endif
struct IncidentLight {
	vec3 color;
	vec3 direction;
	bool visible;
};
struct ReflectedLight {
	vec3 directDiffuse;
	vec3 directSpecular;
	vec3 indirectDiffuse;
	vec3 indirectSpecular;
};
#ifdef USE_ALPHAHASH
	varying vec3 vPosition;
#endif
vec3 transformDirection( in vec3 dir, in mat4 matrix ) {
	return normalize( ( matrix * vec4( dir, 0.0 ) ).xyz );
}
#define inverseTransformDirection transformDirectionByInverseViewMatrix
vec3 transformNormalByInverseViewMatrix( in vec3 normal, in mat4 viewMatrix ) {
	return normalize( ( vec4( normal, 0.0 ) * viewMatrix ).xyz );
}
vec3 transformDirectionByInverseViewMatrix( in vec3 dir, in mat4 viewMatrix ) {
	return normalize( ( vec4( dir, 0.0 ) * viewMatrix ).xyz );
}
bool isPerspectiveMatrix( mat4 m ) {
	return m[ 2 ][ 3 ] == - 1.0;
}
vec2 equirectUv( in vec3 dir ) {
	float u = atan( dir.z, dir.x ) * RECIPROCAL_PI2 + 0.5;
	float v = asin( clamp( dir.y, - 1.0, 1.0 ) ) * RECIPROCAL_PI + 0.5;
	return vec2( u, v );
}
vec3 BRDF_Lambert( const in vec3 diffuseColor ) {
	return RECIPROCAL_PI * diffuseColor;
}
vec3 F_Schlick( const in vec3 f0, const in float f90, const in float dotVH ) {
	float fresnel = exp2( ( - 5.55473 * dotVH - 6.98316 ) * dotVH );
	return f0 * ( 1.0 - fresnel ) + ( f90 * fresnel );
}
float F_Schlick( const in float f0, const in float f90, const in float dotVH ) {
	float fresnel = exp2( ( - 5.55473 * dotVH - 6.98316 ) * dotVH );
	return f0 * ( 1.0 - fresnel ) + ( f90 * fresnel );
} // validated`,fm=`vec3 transformedNormal = objectNormal;
#ifdef USE_TANGENT
	vec3 transformedTangent = objectTangent;
#endif
#ifdef USE_BATCHING
	mat3 bm = mat3( batchingMatrix );
	transformedNormal /= vec3( dot( bm[ 0 ], bm[ 0 ] ), dot( bm[ 1 ], bm[ 1 ] ), dot( bm[ 2 ], bm[ 2 ] ) );
	transformedNormal = bm * transformedNormal;
	#ifdef USE_TANGENT
		transformedTangent = bm * transformedTangent;
	#endif
#endif
#ifdef USE_INSTANCING
	mat3 im = mat3( instanceMatrix );
	transformedNormal /= vec3( dot( im[ 0 ], im[ 0 ] ), dot( im[ 1 ], im[ 1 ] ), dot( im[ 2 ], im[ 2 ] ) );
	transformedNormal = im * transformedNormal;
	#ifdef USE_TANGENT
		transformedTangent = im * transformedTangent;
	#endif
#endif
transformedNormal = normalMatrix * transformedNormal;
#ifdef FLIP_SIDED
	transformedNormal = - transformedNormal;
#endif
#ifdef USE_TANGENT
	transformedTangent = ( modelViewMatrix * vec4( transformedTangent, 0.0 ) ).xyz;
#endif`,pm=`#ifdef USE_DISPLACEMENTMAP
	uniform sampler2D displacementMap;
	uniform float displacementScale;
	uniform float displacementBias;
#endif`,mm=`#ifdef USE_DISPLACEMENTMAP
	transformed += normalize( objectNormal ) * ( texture2D( displacementMap, vDisplacementMapUv ).x * displacementScale + displacementBias );
#endif`,_m=`#ifdef USE_EMISSIVEMAP
	vec4 emissiveColor = texture2D( emissiveMap, vEmissiveMapUv );
	#ifdef DECODE_VIDEO_TEXTURE_EMISSIVE
		emissiveColor = sRGBTransferEOTF( emissiveColor );
	#endif
	totalEmissiveRadiance *= emissiveColor.rgb;
#endif`,gm=`#ifdef USE_EMISSIVEMAP
	uniform sampler2D emissiveMap;
#endif`,xm="gl_FragColor = linearToOutputTexel( gl_FragColor );",vm=`vec4 LinearTransferOETF( in vec4 value ) {
	return value;
}
vec4 sRGBTransferEOTF( in vec4 value ) {
	return vec4( mix( pow( value.rgb * 0.9478672986 + vec3( 0.0521327014 ), vec3( 2.4 ) ), value.rgb * 0.0773993808, vec3( lessThanEqual( value.rgb, vec3( 0.04045 ) ) ) ), value.a );
}
vec4 sRGBTransferOETF( in vec4 value ) {
	return vec4( mix( pow( value.rgb, vec3( 0.41666 ) ) * 1.055 - vec3( 0.055 ), value.rgb * 12.92, vec3( lessThanEqual( value.rgb, vec3( 0.0031308 ) ) ) ), value.a );
}`,Sm=`#ifdef USE_ENVMAP
	#ifdef ENV_WORLDPOS
		vec3 cameraToFrag;
		if ( isOrthographic ) {
			cameraToFrag = normalize( vec3( - viewMatrix[ 0 ][ 2 ], - viewMatrix[ 1 ][ 2 ], - viewMatrix[ 2 ][ 2 ] ) );
		} else {
			cameraToFrag = normalize( vWorldPosition - cameraPosition );
		}
		vec3 worldNormal = transformNormalByInverseViewMatrix( normal, viewMatrix );
		#ifdef ENVMAP_MODE_REFLECTION
			vec3 reflectVec = reflect( cameraToFrag, worldNormal );
		#else
			vec3 reflectVec = refract( cameraToFrag, worldNormal, refractionRatio );
		#endif
	#else
		vec3 reflectVec = vReflect;
	#endif
	#ifdef ENVMAP_TYPE_CUBE
		vec4 envColor = textureCube( envMap, envMapRotation * reflectVec );
		#ifdef ENVMAP_BLENDING_MULTIPLY
			outgoingLight = mix( outgoingLight, outgoingLight * envColor.xyz, specularStrength * reflectivity );
		#elif defined( ENVMAP_BLENDING_MIX )
			outgoingLight = mix( outgoingLight, envColor.xyz, specularStrength * reflectivity );
		#elif defined( ENVMAP_BLENDING_ADD )
			outgoingLight += envColor.xyz * specularStrength * reflectivity;
		#endif
	#endif
#endif`,Mm=`#ifdef USE_ENVMAP
	uniform float envMapIntensity;
	uniform mat3 envMapRotation;
	uniform samplerCube envMap;
	#ifdef ENVMAP_TYPE_PMREM
		float roughnessToMip( const in float roughness ) {
			float r = clamp( roughness, 0.0, 1.0 );
			return ENVMAP_MAX_LOD * r * ( 2.0 - r );
		}
	#endif
#endif`,ym=`#ifdef USE_ENVMAP
	uniform float reflectivity;
	#if defined( USE_BUMPMAP ) || defined( USE_NORMALMAP ) || defined( PHONG ) || defined( LAMBERT )
		#define ENV_WORLDPOS
	#endif
	#ifdef ENV_WORLDPOS
		varying vec3 vWorldPosition;
		uniform float refractionRatio;
	#else
		varying vec3 vReflect;
	#endif
#endif`,Em=`#ifdef USE_ENVMAP
	#if defined( USE_BUMPMAP ) || defined( USE_NORMALMAP ) || defined( PHONG ) || defined( LAMBERT )
		#define ENV_WORLDPOS
	#endif
	#ifdef ENV_WORLDPOS
		
		varying vec3 vWorldPosition;
	#else
		varying vec3 vReflect;
		uniform float refractionRatio;
	#endif
#endif`,bm=`#ifdef USE_ENVMAP
	#ifdef ENV_WORLDPOS
		vWorldPosition = worldPosition.xyz;
	#else
		vec3 cameraToVertex;
		if ( isOrthographic ) {
			cameraToVertex = normalize( vec3( - viewMatrix[ 0 ][ 2 ], - viewMatrix[ 1 ][ 2 ], - viewMatrix[ 2 ][ 2 ] ) );
		} else {
			cameraToVertex = normalize( worldPosition.xyz - cameraPosition );
		}
		vec3 worldNormal = transformNormalByInverseViewMatrix( transformedNormal, viewMatrix );
		#ifdef ENVMAP_MODE_REFLECTION
			vReflect = reflect( cameraToVertex, worldNormal );
		#else
			vReflect = refract( cameraToVertex, worldNormal, refractionRatio );
		#endif
	#endif
#endif`,Tm=`#ifdef USE_FOG
	vFogDepth = - mvPosition.z;
#endif`,wm=`#ifdef USE_FOG
	varying float vFogDepth;
#endif`,Am=`#ifdef USE_FOG
	#ifdef FOG_EXP2
		float fogFactor = 1.0 - exp( - fogDensity * fogDensity * vFogDepth * vFogDepth );
	#else
		float fogFactor = smoothstep( fogNear, fogFar, vFogDepth );
	#endif
	gl_FragColor.rgb = mix( gl_FragColor.rgb, fogColor, fogFactor );
#endif`,Rm=`#ifdef USE_FOG
	uniform vec3 fogColor;
	varying float vFogDepth;
	#ifdef FOG_EXP2
		uniform float fogDensity;
	#else
		uniform float fogNear;
		uniform float fogFar;
	#endif
#endif`,Cm=`#ifdef USE_GRADIENTMAP
	uniform sampler2D gradientMap;
#endif
vec3 getGradientIrradiance( vec3 normal, vec3 lightDirection ) {
	float dotNL = dot( normal, lightDirection );
	vec2 coord = vec2( dotNL * 0.5 + 0.5, 0.0 );
	#ifdef USE_GRADIENTMAP
		return vec3( texture2D( gradientMap, coord ).r );
	#else
		vec2 fw = fwidth( coord ) * 0.5;
		return mix( vec3( 0.7 ), vec3( 1.0 ), smoothstep( 0.7 - fw.x, 0.7 + fw.x, coord.x ) );
	#endif
}`,Pm=`#ifdef USE_LIGHTMAP
	uniform sampler2D lightMap;
	uniform float lightMapIntensity;
#endif`,Lm=`LambertMaterial material;
material.diffuseColor = diffuseColor.rgb;
material.specularStrength = specularStrength;`,Dm=`varying vec3 vViewPosition;
struct LambertMaterial {
	vec3 diffuseColor;
	float specularStrength;
};
void RE_Direct_Lambert( const in IncidentLight directLight, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in LambertMaterial material, inout ReflectedLight reflectedLight ) {
	float dotNL = saturate( dot( geometryNormal, directLight.direction ) );
	vec3 irradiance = dotNL * directLight.color;
	reflectedLight.directDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
}
void RE_IndirectDiffuse_Lambert( const in vec3 irradiance, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in LambertMaterial material, inout ReflectedLight reflectedLight ) {
	reflectedLight.indirectDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
}
#define RE_Direct				RE_Direct_Lambert
#define RE_IndirectDiffuse		RE_IndirectDiffuse_Lambert`,Nm=`uniform bool receiveShadow;
uniform vec3 ambientLightColor;
#if defined( USE_LIGHT_PROBES )
	uniform vec3 lightProbe[ 9 ];
#endif
vec3 shGetIrradianceAt( in vec3 normal, in vec3 shCoefficients[ 9 ] ) {
	float x = normal.x, y = normal.y, z = normal.z;
	vec3 result = shCoefficients[ 0 ] * 0.886227;
	result += shCoefficients[ 1 ] * 2.0 * 0.511664 * y;
	result += shCoefficients[ 2 ] * 2.0 * 0.511664 * z;
	result += shCoefficients[ 3 ] * 2.0 * 0.511664 * x;
	result += shCoefficients[ 4 ] * 2.0 * 0.429043 * x * y;
	result += shCoefficients[ 5 ] * 2.0 * 0.429043 * y * z;
	result += shCoefficients[ 6 ] * ( 0.743125 * z * z - 0.247708 );
	result += shCoefficients[ 7 ] * 2.0 * 0.429043 * x * z;
	result += shCoefficients[ 8 ] * 0.429043 * ( x * x - y * y );
	return result;
}
vec3 getLightProbeIrradiance( const in vec3 lightProbe[ 9 ], const in vec3 normal ) {
	vec3 worldNormal = transformNormalByInverseViewMatrix( normal, viewMatrix );
	vec3 irradiance = shGetIrradianceAt( worldNormal, lightProbe );
	return irradiance;
}
vec3 getAmbientLightIrradiance( const in vec3 ambientLightColor ) {
	vec3 irradiance = ambientLightColor;
	return irradiance;
}
float getDistanceAttenuation( const in float lightDistance, const in float cutoffDistance, const in float decayExponent ) {
	float distanceFalloff = 1.0 / max( pow( lightDistance, decayExponent ), 0.01 );
	if ( cutoffDistance > 0.0 ) {
		distanceFalloff *= pow2( saturate( 1.0 - pow4( lightDistance / cutoffDistance ) ) );
	}
	return distanceFalloff;
}
float getSpotAttenuation( const in float coneCosine, const in float penumbraCosine, const in float angleCosine ) {
	return smoothstep( coneCosine, penumbraCosine, angleCosine );
}
#if NUM_SUN_LIGHTS > 0
	struct SunLight {
		vec3 direction;
		vec3 color;
	};
	uniform SunLight sunLights[ NUM_SUN_LIGHTS ];
	void getSunLightInfo( const in SunLight sunLight, out IncidentLight light ) {
		light.color = sunLight.color;
		light.direction = sunLight.direction;
		light.visible = true;
	}
#endif
#if NUM_DIR_LIGHTS > 0
	struct DirectionalLight {
		vec3 direction;
		vec3 color;
	};
	uniform DirectionalLight directionalLights[ NUM_DIR_LIGHTS ];
	void getDirectionalLightInfo( const in DirectionalLight directionalLight, out IncidentLight light ) {
		light.color = directionalLight.color;
		light.direction = directionalLight.direction;
		light.visible = true;
	}
#endif
#if NUM_POINT_LIGHTS > 0
	struct PointLight {
		vec3 position;
		vec3 color;
		float distance;
		float decay;
	};
	uniform PointLight pointLights[ NUM_POINT_LIGHTS ];
	void getPointLightInfo( const in PointLight pointLight, const in vec3 geometryPosition, out IncidentLight light ) {
		vec3 lVector = pointLight.position - geometryPosition;
		light.direction = normalize( lVector );
		float lightDistance = length( lVector );
		light.color = pointLight.color;
		light.color *= getDistanceAttenuation( lightDistance, pointLight.distance, pointLight.decay );
		light.visible = ( light.color != vec3( 0.0 ) );
	}
#endif
#if NUM_SPOT_LIGHTS > 0
	struct SpotLight {
		vec3 position;
		vec3 direction;
		vec3 color;
		float distance;
		float decay;
		float coneCos;
		float penumbraCos;
	};
	uniform SpotLight spotLights[ NUM_SPOT_LIGHTS ];
	void getSpotLightInfo( const in SpotLight spotLight, const in vec3 geometryPosition, out IncidentLight light ) {
		vec3 lVector = spotLight.position - geometryPosition;
		light.direction = normalize( lVector );
		float angleCos = dot( light.direction, spotLight.direction );
		float spotAttenuation = getSpotAttenuation( spotLight.coneCos, spotLight.penumbraCos, angleCos );
		if ( spotAttenuation > 0.0 ) {
			float lightDistance = length( lVector );
			light.color = spotLight.color * spotAttenuation;
			light.color *= getDistanceAttenuation( lightDistance, spotLight.distance, spotLight.decay );
			light.visible = ( light.color != vec3( 0.0 ) );
		} else {
			light.color = vec3( 0.0 );
			light.visible = false;
		}
	}
#endif
#if NUM_RECT_AREA_LIGHTS > 0
	struct RectAreaLight {
		vec3 color;
		vec3 position;
		vec3 halfWidth;
		vec3 halfHeight;
	};
	uniform sampler2D ltc_1;	uniform sampler2D ltc_2;
	uniform RectAreaLight rectAreaLights[ NUM_RECT_AREA_LIGHTS ];
#endif
#if NUM_HEMI_LIGHTS > 0
	struct HemisphereLight {
		vec3 direction;
		vec3 skyColor;
		vec3 groundColor;
	};
	uniform HemisphereLight hemisphereLights[ NUM_HEMI_LIGHTS ];
	vec3 getHemisphereLightIrradiance( const in HemisphereLight hemiLight, const in vec3 normal ) {
		float dotNL = dot( normal, hemiLight.direction );
		float hemiDiffuseWeight = 0.5 * dotNL + 0.5;
		vec3 irradiance = mix( hemiLight.groundColor, hemiLight.skyColor, hemiDiffuseWeight );
		return irradiance;
	}
#endif
#include <lightprobes_pars_fragment>`,Im=`#ifdef USE_ENVMAP
	vec3 getIBLIrradiance( const in vec3 normal ) {
		#ifdef ENVMAP_TYPE_PMREM
			vec3 worldNormal = transformNormalByInverseViewMatrix( normal, viewMatrix );
			vec4 envMapColor = textureLod( envMap, envMapRotation * worldNormal, ENVMAP_MAX_LOD );
			return PI * envMapColor.rgb * envMapIntensity;
		#else
			return vec3( 0.0 );
		#endif
	}
	vec3 getIBLRadiance( const in vec3 viewDir, const in vec3 normal, const in float roughness ) {
		#ifdef ENVMAP_TYPE_PMREM
			vec3 reflectVec = reflect( - viewDir, normal );
			reflectVec = normalize( mix( reflectVec, normal, pow4( roughness ) ) );
			reflectVec = transformDirectionByInverseViewMatrix( reflectVec, viewMatrix );
			vec4 envMapColor = textureLod( envMap, envMapRotation * reflectVec, roughnessToMip( roughness ) );
			return envMapColor.rgb * envMapIntensity;
		#else
			return vec3( 0.0 );
		#endif
	}
	#ifdef USE_RETROREFLECTION
		vec3 getIBLRetroRadiance( const in vec3 viewDir, const in vec3 normal, const in float roughness ) {
			#ifdef ENVMAP_TYPE_PMREM
				vec3 retroVec = normalize( mix( viewDir, normal, pow4( roughness ) ) );
				retroVec = transformDirectionByInverseViewMatrix( retroVec, viewMatrix );
				vec4 envMapColor = textureLod( envMap, envMapRotation * retroVec, roughnessToMip( roughness ) );
				return envMapColor.rgb * envMapIntensity;
			#else
				return vec3( 0.0 );
			#endif
		}
	#endif
	#ifdef USE_ANISOTROPY
		vec3 getIBLAnisotropyRadiance( const in vec3 viewDir, const in vec3 normal, const in float roughness, const in vec3 bitangent, const in float anisotropy ) {
			#ifdef ENVMAP_TYPE_PMREM
				vec3 bentNormal = cross( bitangent, viewDir );
				bentNormal = normalize( cross( bentNormal, bitangent ) );
				bentNormal = normalize( mix( bentNormal, normal, pow2( pow2( 1.0 - anisotropy * ( 1.0 - roughness ) ) ) ) );
				return getIBLRadiance( viewDir, bentNormal, roughness );
			#else
				return vec3( 0.0 );
			#endif
		}
		#ifdef USE_RETROREFLECTION
			vec3 getIBLAnisotropyRetroRadiance( const in vec3 viewDir, const in vec3 normal, const in float roughness, const in vec3 bitangent, const in float anisotropy ) {
				#ifdef ENVMAP_TYPE_PMREM
					vec3 bentNormal = cross( bitangent, viewDir );
					bentNormal = normalize( cross( bentNormal, bitangent ) );
					bentNormal = normalize( mix( bentNormal, normal, pow2( pow2( 1.0 - anisotropy * ( 1.0 - roughness ) ) ) ) );
					return getIBLRetroRadiance( viewDir, bentNormal, roughness );
				#else
					return vec3( 0.0 );
				#endif
			}
		#endif
	#endif
#endif`,Um=`ToonMaterial material;
material.diffuseColor = diffuseColor.rgb;`,Fm=`varying vec3 vViewPosition;
struct ToonMaterial {
	vec3 diffuseColor;
};
void RE_Direct_Toon( const in IncidentLight directLight, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in ToonMaterial material, inout ReflectedLight reflectedLight ) {
	vec3 irradiance = getGradientIrradiance( geometryNormal, directLight.direction ) * directLight.color;
	reflectedLight.directDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
}
void RE_IndirectDiffuse_Toon( const in vec3 irradiance, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in ToonMaterial material, inout ReflectedLight reflectedLight ) {
	reflectedLight.indirectDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
}
#define RE_Direct				RE_Direct_Toon
#define RE_IndirectDiffuse		RE_IndirectDiffuse_Toon`,Om=`BlinnPhongMaterial material;
material.diffuseColor = diffuseColor.rgb;
material.specularColor = specular;
material.specularShininess = shininess;
material.specularStrength = specularStrength;`,Bm=`varying vec3 vViewPosition;
struct BlinnPhongMaterial {
	vec3 diffuseColor;
	vec3 specularColor;
	float specularShininess;
	float specularStrength;
};
void RE_Direct_BlinnPhong( const in IncidentLight directLight, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in BlinnPhongMaterial material, inout ReflectedLight reflectedLight ) {
	float dotNL = saturate( dot( geometryNormal, directLight.direction ) );
	vec3 irradiance = dotNL * directLight.color;
	reflectedLight.directDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
	reflectedLight.directSpecular += irradiance * BRDF_BlinnPhong( directLight.direction, geometryViewDir, geometryNormal, material.specularColor, material.specularShininess ) * material.specularStrength;
}
void RE_IndirectDiffuse_BlinnPhong( const in vec3 irradiance, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in BlinnPhongMaterial material, inout ReflectedLight reflectedLight ) {
	reflectedLight.indirectDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
}
#define RE_Direct				RE_Direct_BlinnPhong
#define RE_IndirectDiffuse		RE_IndirectDiffuse_BlinnPhong`,zm=`PhysicalMaterial material;
material.diffuseColor = diffuseColor.rgb;
material.diffuseContribution = diffuseColor.rgb * ( 1.0 - metalnessFactor );
material.metalness = metalnessFactor;
vec3 dxy = max( abs( dFdx( nonPerturbedNormal ) ), abs( dFdy( nonPerturbedNormal ) ) );
float geometryRoughness = max( max( dxy.x, dxy.y ), dxy.z );
material.roughness = max( roughnessFactor, 0.045 );
material.roughness += geometryRoughness;
material.roughness = min( material.roughness, 1.0 );
#ifdef USE_DIFFUSE_ROUGHNESS
	float diffuseRoughnessFactor = diffuseRoughness;
	#ifdef USE_DIFFUSE_ROUGHNESSMAP
		diffuseRoughnessFactor *= texture2D( diffuseRoughnessMap, vDiffuseRoughnessMapUv ).r;
	#endif
	material.diffuseRoughness = saturate( diffuseRoughnessFactor );
#endif
#ifdef IOR
	material.ior = ior;
	#ifdef USE_SPECULAR
		float specularIntensityFactor = specularIntensity;
		vec3 specularColorFactor = specularColor;
		#ifdef USE_SPECULAR_COLORMAP
			specularColorFactor *= texture2D( specularColorMap, vSpecularColorMapUv ).rgb;
		#endif
		#ifdef USE_SPECULAR_INTENSITYMAP
			specularIntensityFactor *= texture2D( specularIntensityMap, vSpecularIntensityMapUv ).a;
		#endif
		material.specularF90 = mix( specularIntensityFactor, 1.0, metalnessFactor );
	#else
		float specularIntensityFactor = 1.0;
		vec3 specularColorFactor = vec3( 1.0 );
		material.specularF90 = 1.0;
	#endif
	material.specularColor = min( pow2( ( material.ior - 1.0 ) / ( material.ior + 1.0 ) ) * specularColorFactor, vec3( 1.0 ) ) * specularIntensityFactor;
	material.specularColorBlended = mix( material.specularColor, diffuseColor.rgb, metalnessFactor );
#else
	material.specularColor = vec3( 0.04 );
	material.specularColorBlended = mix( material.specularColor, diffuseColor.rgb, metalnessFactor );
	material.specularF90 = 1.0;
#endif
#ifdef USE_CLEARCOAT
	material.clearcoat = clearcoat;
	material.clearcoatRoughness = clearcoatRoughness;
	material.clearcoatF0 = vec3( 0.04 );
	material.clearcoatF90 = 1.0;
	#ifdef USE_CLEARCOATMAP
		material.clearcoat *= texture2D( clearcoatMap, vClearcoatMapUv ).x;
	#endif
	#ifdef USE_CLEARCOAT_ROUGHNESSMAP
		material.clearcoatRoughness *= texture2D( clearcoatRoughnessMap, vClearcoatRoughnessMapUv ).y;
	#endif
	material.clearcoat = saturate( material.clearcoat );	material.clearcoatRoughness = max( material.clearcoatRoughness, 0.045 );
	material.clearcoatRoughness += geometryRoughness;
	material.clearcoatRoughness = min( material.clearcoatRoughness, 1.0 );
#endif
#ifdef USE_DISPERSION
	material.dispersion = dispersion;
#endif
#ifdef USE_RETROREFLECTION
	material.retroreflectivity = retroreflectivity;
#endif
#ifdef USE_IRIDESCENCE
	material.iridescence = iridescence;
	material.iridescenceIOR = iridescenceIOR;
	#ifdef USE_IRIDESCENCEMAP
		material.iridescence *= texture2D( iridescenceMap, vIridescenceMapUv ).r;
	#endif
	#ifdef USE_IRIDESCENCE_THICKNESSMAP
		material.iridescenceThickness = (iridescenceThicknessMaximum - iridescenceThicknessMinimum) * texture2D( iridescenceThicknessMap, vIridescenceThicknessMapUv ).g + iridescenceThicknessMinimum;
	#else
		material.iridescenceThickness = iridescenceThicknessMaximum;
	#endif
#endif
#ifdef USE_SHEEN
	material.sheenColor = sheenColor;
	#ifdef USE_SHEEN_COLORMAP
		material.sheenColor *= texture2D( sheenColorMap, vSheenColorMapUv ).rgb;
	#endif
	material.sheenRoughness = clamp( sheenRoughness, 0.0001, 1.0 );
	#ifdef USE_SHEEN_ROUGHNESSMAP
		material.sheenRoughness *= texture2D( sheenRoughnessMap, vSheenRoughnessMapUv ).a;
	#endif
#endif
#ifdef USE_ANISOTROPY
	#ifdef USE_ANISOTROPYMAP
		mat2 anisotropyMat = mat2( anisotropyVector.x, anisotropyVector.y, - anisotropyVector.y, anisotropyVector.x );
		vec3 anisotropyPolar = texture2D( anisotropyMap, vAnisotropyMapUv ).rgb;
		vec2 anisotropyV = anisotropyMat * normalize( 2.0 * anisotropyPolar.rg - vec2( 1.0 ) ) * anisotropyPolar.b;
	#else
		vec2 anisotropyV = anisotropyVector;
	#endif
	material.anisotropy = length( anisotropyV );
	if( material.anisotropy == 0.0 ) {
		anisotropyV = vec2( 1.0, 0.0 );
	} else {
		anisotropyV /= material.anisotropy;
		material.anisotropy = saturate( material.anisotropy );
	}
	material.alphaT = mix( pow2( material.roughness ), 1.0, pow2( material.anisotropy ) );
	material.anisotropyT = tbn[ 0 ] * anisotropyV.x + tbn[ 1 ] * anisotropyV.y;
	material.anisotropyB = tbn[ 1 ] * anisotropyV.x - tbn[ 0 ] * anisotropyV.y;
#endif`,km=`uniform sampler2D dfgLUT;
struct PhysicalMaterial {
	vec3 diffuseColor;
	vec3 diffuseContribution;
	vec3 specularColor;
	vec3 specularColorBlended;
	float roughness;
	float metalness;
	float specularF90;
	float dispersion;
	vec2 dfg;
	vec3 multiScatteringCompensation;
	#ifdef USE_DIFFUSE_ROUGHNESS
		float diffuseRoughness;
	#endif
	#ifdef USE_RETROREFLECTION
		float retroreflectivity;
	#endif
	#ifdef USE_CLEARCOAT
		float clearcoat;
		float clearcoatRoughness;
		vec3 clearcoatF0;
		float clearcoatF90;
	#endif
	#ifdef USE_IRIDESCENCE
		float iridescence;
		float iridescenceIOR;
		float iridescenceThickness;
		vec3 iridescenceFresnel;
		vec3 iridescenceF0Dielectric;
		vec3 iridescenceF0Metallic;
	#endif
	#ifdef USE_SHEEN
		vec3 sheenColor;
		float sheenRoughness;
	#endif
	#ifdef IOR
		float ior;
	#endif
	#ifdef USE_TRANSMISSION
		float transmission;
		float transmissionAlpha;
		float thickness;
		float attenuationDistance;
		vec3 attenuationColor;
	#endif
	#ifdef USE_ANISOTROPY
		float anisotropy;
		float alphaT;
		vec3 anisotropyT;
		vec3 anisotropyB;
	#endif
};
vec3 clearcoatSpecularDirect = vec3( 0.0 );
vec3 clearcoatSpecularIndirect = vec3( 0.0 );
vec3 sheenSpecularDirect = vec3( 0.0 );
vec3 sheenSpecularIndirect = vec3(0.0 );
vec3 Schlick_to_F0( const in vec3 f, const in float f90, const in float dotVH ) {
    float x = clamp( 1.0 - dotVH, 0.0, 1.0 );
    float x2 = x * x;
    float x5 = clamp( x * x2 * x2, 0.0, 0.9999 );
    return ( f - vec3( f90 ) * x5 ) / ( 1.0 - x5 );
}
#ifdef USE_DIFFUSE_ROUGHNESS
	const float EON_EPSILON = 1e-7;
	float FON_DirectionalAlbedo( const in float mu, const in float roughness, const in float A ) {
		float muComp = 1.0 - mu;
		float gOverPi = muComp * ( 0.0571085289 + muComp * ( 0.491881867 + muComp * ( - 0.332181442 + muComp * 0.0714429953 ) ) );
		return A * ( 1.0 + roughness * gOverPi );
	}
	vec3 BRDF_EON( const in vec3 lightDir, const in vec3 viewDir, const in vec3 normal, const in vec3 diffuseColor, const in float roughness ) {
		vec3 rho = saturate( diffuseColor );
		if ( roughness <= EON_EPSILON ) return BRDF_Lambert( rho );
		float dotNL = saturate( dot( normal, lightDir ) );
		float dotNV = saturate( dot( normal, viewDir ) );
		float s = dot( lightDir, viewDir ) - dotNL * dotNV;
		float sOverT = ( s > 0.0 ) ? s / max( max( dotNL, dotNV ), EON_EPSILON ) : s;
		float A = 1.0 / ( 1.0 + ( 0.5 - 2.0 / ( 3.0 * PI ) ) * roughness );
		vec3 singleScatter = rho * RECIPROCAL_PI * A * ( 1.0 + roughness * sOverT );
		float averageAlbedo = A * ( 1.0 + ( 2.0 / 3.0 - 28.0 / ( 15.0 * PI ) ) * roughness );
		float albedoV = FON_DirectionalAlbedo( dotNV, roughness, A );
		float albedoL = FON_DirectionalAlbedo( dotNL, roughness, A );
		vec3 rhoMultiScatter = rho * rho * averageAlbedo / max( vec3( EON_EPSILON ), vec3( 1.0 ) - rho * ( 1.0 - averageAlbedo ) );
		vec3 multiScatter = rhoMultiScatter * RECIPROCAL_PI
			* max( EON_EPSILON, 1.0 - albedoV )
			* max( EON_EPSILON, 1.0 - albedoL )
			/ max( EON_EPSILON, 1.0 - averageAlbedo );
		return singleScatter + multiScatter;
	}
	vec3 EON_DirectionalAlbedo( const in vec3 diffuseColor, const in float roughness, const in float dotNV ) {
		vec3 rho = saturate( diffuseColor );
		if ( roughness <= EON_EPSILON ) return rho;
		float A = 1.0 / ( 1.0 + ( 0.5 - 2.0 / ( 3.0 * PI ) ) * roughness );
		float directionalAlbedo = FON_DirectionalAlbedo( dotNV, roughness, A );
		float averageAlbedo = A * ( 1.0 + ( 2.0 / 3.0 - 28.0 / ( 15.0 * PI ) ) * roughness );
		vec3 rhoMultiScatter = rho * rho * averageAlbedo / max( vec3( EON_EPSILON ), vec3( 1.0 ) - rho * ( 1.0 - averageAlbedo ) );
		return rho * directionalAlbedo + rhoMultiScatter * ( 1.0 - directionalAlbedo );
	}
#endif
float V_GGX_SmithCorrelated( const in float alpha, const in float dotNL, const in float dotNV ) {
	float a2 = pow2( alpha );
	float gv = dotNL * sqrt( a2 + ( 1.0 - a2 ) * pow2( dotNV ) );
	float gl = dotNV * sqrt( a2 + ( 1.0 - a2 ) * pow2( dotNL ) );
	return 0.5 / max( gv + gl, EPSILON );
}
float D_GGX( const in float alpha, const in float dotNH ) {
	float a2 = pow2( alpha );
	float denom = pow2( dotNH ) * ( a2 - 1.0 ) + 1.0;
	return RECIPROCAL_PI * a2 / pow2( denom );
}
#ifdef USE_ANISOTROPY
	float V_GGX_SmithCorrelated_Anisotropic( const in float alphaT, const in float alphaB, const in float dotTV, const in float dotBV, const in float dotTL, const in float dotBL, const in float dotNV, const in float dotNL ) {
		float gv = dotNL * length( vec3( alphaT * dotTV, alphaB * dotBV, dotNV ) );
		float gl = dotNV * length( vec3( alphaT * dotTL, alphaB * dotBL, dotNL ) );
		return 0.5 / max( gv + gl, EPSILON );
	}
	float D_GGX_Anisotropic( const in float alphaT, const in float alphaB, const in float dotNH, const in float dotTH, const in float dotBH ) {
		float a2 = alphaT * alphaB;
		highp vec3 v = vec3( alphaB * dotTH, alphaT * dotBH, a2 * dotNH );
		highp float v2 = dot( v, v );
		float w2 = a2 / v2;
		return RECIPROCAL_PI * a2 * pow2 ( w2 );
	}
#endif
#ifdef USE_CLEARCOAT
	vec3 BRDF_GGX_Clearcoat( const in vec3 lightDir, const in vec3 viewDir, const in vec3 normal, const in PhysicalMaterial material) {
		vec3 f0 = material.clearcoatF0;
		float f90 = material.clearcoatF90;
		float roughness = max( material.clearcoatRoughness, 0.045 );
		float alpha = pow2( roughness );
		vec3 halfDir = normalize( lightDir + viewDir );
		float dotNL = saturate( dot( normal, lightDir ) );
		float dotNV = saturate( dot( normal, viewDir ) );
		float dotNH = saturate( dot( normal, halfDir ) );
		float dotVH = saturate( dot( viewDir, halfDir ) );
		vec3 F = F_Schlick( f0, f90, dotVH );
		float V = V_GGX_SmithCorrelated( alpha, dotNL, dotNV );
		float D = D_GGX( alpha, dotNH );
		return F * ( V * D );
	}
#endif
vec3 BRDF_GGX( const in vec3 lightDir, const in vec3 viewDir, const in vec3 normal, const in PhysicalMaterial material ) {
	vec3 f0 = material.specularColorBlended;
	float f90 = material.specularF90;
	float roughness = max( material.roughness, 0.045 );
	float alpha = pow2( roughness );
	vec3 halfDir = normalize( lightDir + viewDir );
	float dotNL = saturate( dot( normal, lightDir ) );
	float dotNV = saturate( dot( normal, viewDir ) );
	float dotNH = saturate( dot( normal, halfDir ) );
	float dotVH = saturate( dot( viewDir, halfDir ) );
	vec3 F = F_Schlick( f0, f90, dotVH );
	#ifdef USE_IRIDESCENCE
		F = mix( F, material.iridescenceFresnel, material.iridescence );
	#endif
	#ifdef USE_ANISOTROPY
		float dotTL = dot( material.anisotropyT, lightDir );
		float dotTV = dot( material.anisotropyT, viewDir );
		float dotTH = dot( material.anisotropyT, halfDir );
		float dotBL = dot( material.anisotropyB, lightDir );
		float dotBV = dot( material.anisotropyB, viewDir );
		float dotBH = dot( material.anisotropyB, halfDir );
		float alphaT = max( material.alphaT, alpha );
		float V = V_GGX_SmithCorrelated_Anisotropic( alphaT, alpha, dotTV, dotBV, dotTL, dotBL, dotNV, dotNL );
		float D = D_GGX_Anisotropic( alphaT, alpha, dotNH, dotTH, dotBH );
	#else
		float V = V_GGX_SmithCorrelated( alpha, dotNL, dotNV );
		float D = D_GGX( alpha, dotNH );
	#endif
	return F * ( V * D );
}
vec2 LTC_Uv( const in vec3 N, const in vec3 V, const in float roughness ) {
	const float LUT_SIZE = 64.0;
	const float LUT_SCALE = ( LUT_SIZE - 1.0 ) / LUT_SIZE;
	const float LUT_BIAS = 0.5 / LUT_SIZE;
	float dotNV = saturate( dot( N, V ) );
	vec2 uv = vec2( roughness, sqrt( 1.0 - dotNV ) );
	uv = uv * LUT_SCALE + LUT_BIAS;
	return uv;
}
float LTC_ClippedSphereFormFactor( const in vec3 f ) {
	float l = length( f );
	return max( ( l * l + f.z ) / ( l + 1.0 ), 0.0 );
}
vec3 LTC_EdgeVectorFormFactor( const in vec3 v1, const in vec3 v2 ) {
	float x = dot( v1, v2 );
	float y = abs( x );
	float a = 0.8543985 + ( 0.4965155 + 0.0145206 * y ) * y;
	float b = 3.4175940 + ( 4.1616724 + y ) * y;
	float v = a / b;
	float theta_sintheta = ( x > 0.0 ) ? v : 0.5 * inversesqrt( max( 1.0 - x * x, 1e-7 ) ) - v;
	return cross( v1, v2 ) * theta_sintheta;
}
vec3 LTC_Evaluate( const in vec3 N, const in vec3 V, const in vec3 P, const in mat3 mInv, const in vec3 rectCoords[ 4 ] ) {
	vec3 v1 = rectCoords[ 1 ] - rectCoords[ 0 ];
	vec3 v2 = rectCoords[ 3 ] - rectCoords[ 0 ];
	vec3 lightNormal = cross( v1, v2 );
	if( dot( lightNormal, P - rectCoords[ 0 ] ) < 0.0 ) return vec3( 0.0 );
	vec3 T1, T2;
	T1 = normalize( V - N * dot( V, N ) );
	T2 = - cross( N, T1 );
	mat3 mat = mInv * transpose( mat3( T1, T2, N ) );
	vec3 coords[ 4 ];
	coords[ 0 ] = mat * ( rectCoords[ 0 ] - P );
	coords[ 1 ] = mat * ( rectCoords[ 1 ] - P );
	coords[ 2 ] = mat * ( rectCoords[ 2 ] - P );
	coords[ 3 ] = mat * ( rectCoords[ 3 ] - P );
	coords[ 0 ] = normalize( coords[ 0 ] );
	coords[ 1 ] = normalize( coords[ 1 ] );
	coords[ 2 ] = normalize( coords[ 2 ] );
	coords[ 3 ] = normalize( coords[ 3 ] );
	vec3 vectorFormFactor = vec3( 0.0 );
	vectorFormFactor += LTC_EdgeVectorFormFactor( coords[ 0 ], coords[ 1 ] );
	vectorFormFactor += LTC_EdgeVectorFormFactor( coords[ 1 ], coords[ 2 ] );
	vectorFormFactor += LTC_EdgeVectorFormFactor( coords[ 2 ], coords[ 3 ] );
	vectorFormFactor += LTC_EdgeVectorFormFactor( coords[ 3 ], coords[ 0 ] );
	float result = LTC_ClippedSphereFormFactor( vectorFormFactor );
	return vec3( result );
}
#if defined( USE_SHEEN )
float D_Charlie( float roughness, float dotNH ) {
	float alpha = pow2( roughness );
	float invAlpha = 1.0 / alpha;
	float cos2h = dotNH * dotNH;
	float sin2h = max( 1.0 - cos2h, 0.0078125 );
	return ( 2.0 + invAlpha ) * pow( sin2h, invAlpha * 0.5 ) / ( 2.0 * PI );
}
float V_Neubelt( float dotNV, float dotNL ) {
	return saturate( 1.0 / ( 4.0 * ( dotNL + dotNV - dotNL * dotNV ) ) );
}
vec3 BRDF_Sheen( const in vec3 lightDir, const in vec3 viewDir, const in vec3 normal, vec3 sheenColor, const in float sheenRoughness ) {
	vec3 halfDir = normalize( lightDir + viewDir );
	float dotNL = saturate( dot( normal, lightDir ) );
	float dotNV = saturate( dot( normal, viewDir ) );
	float dotNH = saturate( dot( normal, halfDir ) );
	float D = D_Charlie( sheenRoughness, dotNH );
	float V = V_Neubelt( dotNV, dotNL );
	return sheenColor * ( D * V );
}
#endif
float IBLSheenBRDF( const in vec3 normal, const in vec3 viewDir, const in float roughness ) {
	float dotNV = saturate( dot( normal, viewDir ) );
	float r2 = roughness * roughness;
	float rInv = 1.0 / ( roughness + 0.1 );
	float a = -1.9362 + 1.0678 * roughness + 0.4573 * r2 - 0.8469 * rInv;
	float b = -0.6014 + 0.5538 * roughness - 0.4670 * r2 - 0.1255 * rInv;
	float DG = exp( a * dotNV + b );
	return saturate( DG );
}
vec3 EnvironmentBRDF( const in vec3 normal, const in vec3 viewDir, const in vec3 specularColor, const in float specularF90, const in float roughness ) {
	float dotNV = saturate( dot( normal, viewDir ) );
	vec2 fab = texture2D( dfgLUT, vec2( roughness, dotNV ) ).rg;
	return specularColor * fab.x + specularF90 * fab.y;
}
#ifdef USE_IRIDESCENCE
void computeMultiscatteringIridescence( const in vec2 fab, const in vec3 specularColor, const in float specularF90, const in float iridescence, const in vec3 iridescenceF0, inout vec3 singleScatter, inout vec3 multiScatter ) {
#else
void computeMultiscattering( const in vec2 fab, const in vec3 specularColor, const in float specularF90, inout vec3 singleScatter, inout vec3 multiScatter ) {
#endif
	#ifdef USE_IRIDESCENCE
		vec3 Fr = mix( specularColor, iridescenceF0, iridescence );
	#else
		vec3 Fr = specularColor;
	#endif
	vec3 FssEss = Fr * fab.x + specularF90 * fab.y;
	float Ess = fab.x + fab.y;
	float Ems = 1.0 - Ess;
	vec3 Favg = Fr + ( 1.0 - Fr ) * 0.047619;	vec3 Fms = FssEss * Favg / ( 1.0 - Ems * Favg );
	singleScatter += FssEss;
	multiScatter += Fms * Ems;
}
#if NUM_RECT_AREA_LIGHTS > 0
	void RE_Direct_RectArea_Physical( const in RectAreaLight rectAreaLight, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in PhysicalMaterial material, inout ReflectedLight reflectedLight ) {
		vec3 normal = geometryNormal;
		vec3 viewDir = geometryViewDir;
		vec3 position = geometryPosition;
		vec3 lightPos = rectAreaLight.position;
		vec3 halfWidth = rectAreaLight.halfWidth;
		vec3 halfHeight = rectAreaLight.halfHeight;
		vec3 lightColor = rectAreaLight.color;
		float roughness = material.roughness;
		vec3 rectCoords[ 4 ];
		rectCoords[ 0 ] = lightPos + halfWidth - halfHeight;		rectCoords[ 1 ] = lightPos - halfWidth - halfHeight;
		rectCoords[ 2 ] = lightPos - halfWidth + halfHeight;
		rectCoords[ 3 ] = lightPos + halfWidth + halfHeight;
		vec2 uv = LTC_Uv( normal, viewDir, roughness );
		vec4 t1 = texture2D( ltc_1, uv );
		vec4 t2 = texture2D( ltc_2, uv );
		mat3 mInv = mat3(
			vec3( t1.x, 0, t1.y ),
			vec3(    0, 1,    0 ),
			vec3( t1.z, 0, t1.w )
		);
		vec3 fresnel = ( material.specularColorBlended * t2.x + ( material.specularF90 - material.specularColorBlended ) * t2.y );
		reflectedLight.directSpecular += lightColor * fresnel * LTC_Evaluate( normal, viewDir, position, mInv, rectCoords );
		reflectedLight.directDiffuse += lightColor * material.diffuseContribution * LTC_Evaluate( normal, viewDir, position, mat3( 1.0 ), rectCoords );
		#ifdef USE_CLEARCOAT
			vec3 Ncc = geometryClearcoatNormal;
			vec2 uvClearcoat = LTC_Uv( Ncc, viewDir, material.clearcoatRoughness );
			vec4 t1Clearcoat = texture2D( ltc_1, uvClearcoat );
			vec4 t2Clearcoat = texture2D( ltc_2, uvClearcoat );
			mat3 mInvClearcoat = mat3(
				vec3( t1Clearcoat.x, 0, t1Clearcoat.y ),
				vec3(             0, 1,             0 ),
				vec3( t1Clearcoat.z, 0, t1Clearcoat.w )
			);
			vec3 fresnelClearcoat = material.clearcoatF0 * t2Clearcoat.x + ( material.clearcoatF90 - material.clearcoatF0 ) * t2Clearcoat.y;
			clearcoatSpecularDirect += lightColor * fresnelClearcoat * LTC_Evaluate( Ncc, viewDir, position, mInvClearcoat, rectCoords );
		#endif
	}
#endif
void RE_Direct_Physical( const in IncidentLight directLight, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in PhysicalMaterial material, inout ReflectedLight reflectedLight ) {
	float dotNL = saturate( dot( geometryNormal, directLight.direction ) );
	vec3 irradiance = dotNL * directLight.color;
	#ifdef USE_CLEARCOAT
		float dotNLcc = saturate( dot( geometryClearcoatNormal, directLight.direction ) );
		vec3 ccIrradiance = dotNLcc * directLight.color;
		clearcoatSpecularDirect += ccIrradiance * BRDF_GGX_Clearcoat( directLight.direction, geometryViewDir, geometryClearcoatNormal, material );
	#endif
	#ifdef USE_SHEEN
 
 		sheenSpecularDirect += irradiance * BRDF_Sheen( directLight.direction, geometryViewDir, geometryNormal, material.sheenColor, material.sheenRoughness );
 
 		float sheenAlbedoV = IBLSheenBRDF( geometryNormal, geometryViewDir, material.sheenRoughness );
 		float sheenAlbedoL = IBLSheenBRDF( geometryNormal, directLight.direction, material.sheenRoughness );
 
 		float sheenEnergyComp = 1.0 - max3( material.sheenColor ) * max( sheenAlbedoV, sheenAlbedoL );
 
 		irradiance *= sheenEnergyComp;
 
 	#endif
	vec3 specularBRDF = BRDF_GGX( directLight.direction, geometryViewDir, geometryNormal, material );
	#ifdef USE_RETROREFLECTION
		vec3 retroViewDir = reflect( - geometryViewDir, geometryNormal );
		vec3 retroSpecularBRDF = BRDF_GGX( directLight.direction, retroViewDir, geometryNormal, material );
		specularBRDF = mix( specularBRDF, retroSpecularBRDF, saturate( material.retroreflectivity ) );
	#endif
	reflectedLight.directSpecular += irradiance * specularBRDF * material.multiScatteringCompensation;
	vec3 halfDir = normalize( directLight.direction + geometryViewDir );
	float dotVH = saturate( dot( geometryViewDir, halfDir ) );
	vec3 F = F_Schlick( material.specularColor, material.specularF90, dotVH );
	#ifdef USE_RETROREFLECTION
		vec3 retroHalfDir = normalize( directLight.direction + retroViewDir );
		float dotRetroVH = saturate( dot( retroViewDir, retroHalfDir ) );
		vec3 retroF = F_Schlick( material.specularColor, material.specularF90, dotRetroVH );
		F = mix( F, retroF, saturate( material.retroreflectivity ) );
	#endif
	#ifdef USE_DIFFUSE_ROUGHNESS
		vec3 diffuseBRDF = BRDF_EON( directLight.direction, geometryViewDir, geometryNormal, material.diffuseColor, material.diffuseRoughness ) * ( 1.0 - material.metalness );
	#else
		vec3 diffuseBRDF = BRDF_Lambert( material.diffuseContribution );
	#endif
	reflectedLight.directDiffuse += irradiance * diffuseBRDF * ( 1.0 - F );
}
void RE_IndirectDiffuse_Physical( const in vec3 irradiance, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in PhysicalMaterial material, inout ReflectedLight reflectedLight ) {
	vec3 singleScattering = vec3( 0.0 );
	vec3 multiScattering = vec3( 0.0 );
	#ifdef USE_IRIDESCENCE
		computeMultiscatteringIridescence( material.dfg, material.specularColor, material.specularF90, material.iridescence, material.iridescenceF0Dielectric, singleScattering, multiScattering );
	#else
		computeMultiscattering( material.dfg, material.specularColor, material.specularF90, singleScattering, multiScattering );
	#endif
	#ifdef USE_DIFFUSE_ROUGHNESS
		float dotNV = saturate( dot( geometryNormal, geometryViewDir ) );
		vec3 diffuseAlbedo = EON_DirectionalAlbedo( material.diffuseColor, material.diffuseRoughness, dotNV ) * ( 1.0 - material.metalness );
		vec3 diffuse = irradiance * RECIPROCAL_PI * diffuseAlbedo * ( 1.0 - singleScattering - multiScattering );
	#else
		vec3 diffuse = irradiance * BRDF_Lambert( material.diffuseContribution ) * ( 1.0 - singleScattering - multiScattering );
	#endif
	#ifdef USE_SHEEN
		float sheenAlbedo = IBLSheenBRDF( geometryNormal, geometryViewDir, material.sheenRoughness );
		sheenSpecularIndirect += irradiance * material.sheenColor * sheenAlbedo * RECIPROCAL_PI;
		float sheenEnergyComp = 1.0 - max3( material.sheenColor ) * sheenAlbedo;
		diffuse *= sheenEnergyComp;
	#endif
	reflectedLight.indirectDiffuse += diffuse;
}
void RE_IndirectSpecular_Physical( const in vec3 radiance, const in vec3 irradiance, const in vec3 clearcoatRadiance, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in PhysicalMaterial material, inout ReflectedLight reflectedLight) {
	#ifdef USE_CLEARCOAT
		clearcoatSpecularIndirect += clearcoatRadiance * EnvironmentBRDF( geometryClearcoatNormal, geometryViewDir, material.clearcoatF0, material.clearcoatF90, material.clearcoatRoughness );
	#endif
	#ifdef USE_SHEEN
		sheenSpecularIndirect += irradiance * material.sheenColor * IBLSheenBRDF( geometryNormal, geometryViewDir, material.sheenRoughness ) * RECIPROCAL_PI;
 	#endif
	vec3 singleScatteringDielectric = vec3( 0.0 );
	vec3 multiScatteringDielectric = vec3( 0.0 );
	vec3 singleScatteringMetallic = vec3( 0.0 );
	vec3 multiScatteringMetallic = vec3( 0.0 );
	#ifdef USE_IRIDESCENCE
		computeMultiscatteringIridescence( material.dfg, material.specularColor, material.specularF90, material.iridescence, material.iridescenceF0Dielectric, singleScatteringDielectric, multiScatteringDielectric );
		computeMultiscatteringIridescence( material.dfg, material.diffuseColor, material.specularF90, material.iridescence, material.iridescenceF0Metallic, singleScatteringMetallic, multiScatteringMetallic );
	#else
		computeMultiscattering( material.dfg, material.specularColor, material.specularF90, singleScatteringDielectric, multiScatteringDielectric );
		computeMultiscattering( material.dfg, material.diffuseColor, material.specularF90, singleScatteringMetallic, multiScatteringMetallic );
	#endif
	vec3 singleScattering = mix( singleScatteringDielectric, singleScatteringMetallic, material.metalness );
	vec3 multiScattering = mix( multiScatteringDielectric, multiScatteringMetallic, material.metalness );
	vec3 totalScatteringDielectric = singleScatteringDielectric + multiScatteringDielectric;
	#ifdef USE_DIFFUSE_ROUGHNESS
		float dotNV = saturate( dot( geometryNormal, geometryViewDir ) );
		vec3 diffuse = EON_DirectionalAlbedo( material.diffuseColor, material.diffuseRoughness, dotNV ) * ( 1.0 - material.metalness ) * ( 1.0 - totalScatteringDielectric );
	#else
		vec3 diffuse = material.diffuseContribution * ( 1.0 - totalScatteringDielectric );
	#endif
	vec3 cosineWeightedIrradiance = irradiance * RECIPROCAL_PI;
	vec3 indirectSpecular = radiance * singleScattering;
	indirectSpecular += multiScattering * cosineWeightedIrradiance;
	vec3 indirectDiffuse = diffuse * cosineWeightedIrradiance;
	#ifdef USE_SHEEN
		float sheenAlbedo = IBLSheenBRDF( geometryNormal, geometryViewDir, material.sheenRoughness );
		float sheenEnergyComp = 1.0 - max3( material.sheenColor ) * sheenAlbedo;
		indirectSpecular *= sheenEnergyComp;
		indirectDiffuse *= sheenEnergyComp;
	#endif
	reflectedLight.indirectSpecular += indirectSpecular;
	reflectedLight.indirectDiffuse += indirectDiffuse;
}
#define RE_Direct				RE_Direct_Physical
#define RE_Direct_RectArea		RE_Direct_RectArea_Physical
#define RE_IndirectDiffuse		RE_IndirectDiffuse_Physical
#define RE_IndirectSpecular		RE_IndirectSpecular_Physical
float computeSpecularOcclusion( const in float dotNV, const in float ambientOcclusion, const in float roughness ) {
	return saturate( pow( dotNV + ambientOcclusion, exp2( - 16.0 * roughness - 1.0 ) ) - 1.0 + ambientOcclusion );
}`,Hm=`
vec3 geometryPosition = - vViewPosition;
vec3 geometryNormal = normal;
vec3 geometryViewDir = ( isOrthographic ) ? vec3( 0, 0, 1 ) : normalize( vViewPosition );
vec3 geometryClearcoatNormal = vec3( 0.0 );
#ifdef USE_CLEARCOAT
	geometryClearcoatNormal = clearcoatNormal;
#endif
#ifdef USE_IRIDESCENCE
	float dotNVi = saturate( dot( normal, geometryViewDir ) );
	if ( material.iridescenceThickness == 0.0 ) {
		material.iridescence = 0.0;
	} else {
		material.iridescence = saturate( material.iridescence );
	}
	if ( material.iridescence > 0.0 ) {
		vec3 iridescenceFresnelDielectric = evalIridescence( 1.0, material.iridescenceIOR, dotNVi, material.iridescenceThickness, material.specularColor );
		vec3 iridescenceFresnelMetallic = evalIridescence( 1.0, material.iridescenceIOR, dotNVi, material.iridescenceThickness, material.diffuseColor );
		material.iridescenceFresnel = mix( iridescenceFresnelDielectric, iridescenceFresnelMetallic, material.metalness );
		material.iridescenceF0Dielectric = Schlick_to_F0( iridescenceFresnelDielectric, 1.0, dotNVi );
		material.iridescenceF0Metallic = Schlick_to_F0( iridescenceFresnelMetallic, 1.0, dotNVi );
	}
#endif
#ifdef STANDARD
	float dotNVms = saturate( dot( geometryNormal, geometryViewDir ) );
	material.dfg = texture2D( dfgLUT, vec2( material.roughness, dotNVms ) ).rg;
	#if ( NUM_SUN_LIGHTS > 0 || NUM_DIR_LIGHTS > 0 || NUM_POINT_LIGHTS > 0 || NUM_SPOT_LIGHTS > 0 )
		float EssMs = material.dfg.x + material.dfg.y;
		material.multiScatteringCompensation = 1.0 + material.specularColorBlended * ( 1.0 / EssMs - 1.0 );
	#endif
#endif
IncidentLight directLight;
#if ( NUM_POINT_LIGHTS > 0 ) && defined( RE_Direct )
	PointLight pointLight;
	#if defined( USE_SHADOWMAP ) && NUM_POINT_LIGHT_SHADOWS > 0
	PointLightShadow pointLightShadow;
	#endif
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_POINT_LIGHTS; i ++ ) {
		pointLight = pointLights[ i ];
		getPointLightInfo( pointLight, geometryPosition, directLight );
		#if defined( USE_SHADOWMAP ) && ( UNROLLED_LOOP_INDEX < NUM_POINT_LIGHT_SHADOWS ) && ( defined( SHADOWMAP_TYPE_PCF ) || defined( SHADOWMAP_TYPE_BASIC ) )
		pointLightShadow = pointLightShadows[ i ];
		directLight.color *= ( directLight.visible && receiveShadow ) ? getPointShadow( pointShadowMap[ i ], pointLightShadow.shadowMapSize, pointLightShadow.shadowIntensity, pointLightShadow.shadowBias, pointLightShadow.shadowRadius, vPointShadowCoord[ i ], pointLightShadow.shadowCameraNear, pointLightShadow.shadowCameraFar ) : 1.0;
		#endif
		RE_Direct( directLight, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
	}
	#pragma unroll_loop_end
#endif
#if ( NUM_SPOT_LIGHTS > 0 ) && defined( RE_Direct )
	SpotLight spotLight;
	vec4 spotColor;
	vec3 spotLightCoord;
	bool inSpotLightMap;
	#if defined( USE_SHADOWMAP ) && NUM_SPOT_LIGHT_SHADOWS > 0
	SpotLightShadow spotLightShadow;
	#endif
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_SPOT_LIGHTS; i ++ ) {
		spotLight = spotLights[ i ];
		getSpotLightInfo( spotLight, geometryPosition, directLight );
		#if ( UNROLLED_LOOP_INDEX < NUM_SPOT_LIGHT_SHADOWS_WITH_MAPS )
		#define SPOT_LIGHT_MAP_INDEX UNROLLED_LOOP_INDEX
		#elif ( UNROLLED_LOOP_INDEX < NUM_SPOT_LIGHT_SHADOWS )
		#define SPOT_LIGHT_MAP_INDEX NUM_SPOT_LIGHT_MAPS
		#else
		#define SPOT_LIGHT_MAP_INDEX ( UNROLLED_LOOP_INDEX - NUM_SPOT_LIGHT_SHADOWS + NUM_SPOT_LIGHT_SHADOWS_WITH_MAPS )
		#endif
		#if ( SPOT_LIGHT_MAP_INDEX < NUM_SPOT_LIGHT_MAPS )
			spotLightCoord = vSpotLightCoord[ i ].xyz / vSpotLightCoord[ i ].w;
			inSpotLightMap = all( lessThan( abs( spotLightCoord * 2. - 1. ), vec3( 1.0 ) ) );
			spotColor = texture2D( spotLightMap[ SPOT_LIGHT_MAP_INDEX ], spotLightCoord.xy );
			directLight.color = inSpotLightMap ? directLight.color * spotColor.rgb : directLight.color;
		#endif
		#undef SPOT_LIGHT_MAP_INDEX
		#if defined( USE_SHADOWMAP ) && ( UNROLLED_LOOP_INDEX < NUM_SPOT_LIGHT_SHADOWS )
		spotLightShadow = spotLightShadows[ i ];
		directLight.color *= ( directLight.visible && receiveShadow ) ? getShadow( spotShadowMap[ i ], spotLightShadow.shadowMapSize, spotLightShadow.shadowIntensity, spotLightShadow.shadowBias, spotLightShadow.shadowRadius, vSpotLightCoord[ i ] ) : 1.0;
		#endif
		RE_Direct( directLight, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
	}
	#pragma unroll_loop_end
#endif
#if ( NUM_SUN_LIGHTS > 0 ) && defined( RE_Direct )
	SunLight sunLight;
	#if defined( USE_SHADOWMAP ) && NUM_SUN_LIGHT_SHADOWS > 0
	SunLightShadow sunLightShadow;
	#endif
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_SUN_LIGHTS; i ++ ) {
		sunLight = sunLights[ i ];
		getSunLightInfo( sunLight, directLight );
		#if defined( USE_SHADOWMAP ) && ( UNROLLED_LOOP_INDEX < NUM_SUN_LIGHT_SHADOWS )
		sunLightShadow = sunLightShadows[ i ];
		directLight.color *= ( directLight.visible && receiveShadow ) ? getSunShadow( sunShadowMap[ i ], sunLightShadow, UNROLLED_LOOP_INDEX ) : 1.0;
		#endif
		RE_Direct( directLight, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
	}
	#pragma unroll_loop_end
#endif
#if ( NUM_DIR_LIGHTS > 0 ) && defined( RE_Direct )
	DirectionalLight directionalLight;
	#if defined( USE_SHADOWMAP ) && NUM_DIR_LIGHT_SHADOWS > 0
	DirectionalLightShadow directionalLightShadow;
	#endif
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_DIR_LIGHTS; i ++ ) {
		directionalLight = directionalLights[ i ];
		getDirectionalLightInfo( directionalLight, directLight );
		#if defined( USE_SHADOWMAP ) && ( UNROLLED_LOOP_INDEX < NUM_DIR_LIGHT_SHADOWS )
		directionalLightShadow = directionalLightShadows[ i ];
		directLight.color *= ( directLight.visible && receiveShadow ) ? getShadow( directionalShadowMap[ i ], directionalLightShadow.shadowMapSize, directionalLightShadow.shadowIntensity, directionalLightShadow.shadowBias, directionalLightShadow.shadowRadius, vDirectionalShadowCoord[ i ] ) : 1.0;
		#endif
		RE_Direct( directLight, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
	}
	#pragma unroll_loop_end
#endif
#if ( NUM_RECT_AREA_LIGHTS > 0 ) && defined( RE_Direct_RectArea )
	RectAreaLight rectAreaLight;
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_RECT_AREA_LIGHTS; i ++ ) {
		rectAreaLight = rectAreaLights[ i ];
		RE_Direct_RectArea( rectAreaLight, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
	}
	#pragma unroll_loop_end
#endif
#if defined( RE_IndirectDiffuse )
	vec3 iblIrradiance = vec3( 0.0 );
	vec3 irradiance = getAmbientLightIrradiance( ambientLightColor );
	#if defined( USE_LIGHT_PROBES )
		irradiance += getLightProbeIrradiance( lightProbe, geometryNormal );
	#endif
	#if ( NUM_HEMI_LIGHTS > 0 )
		#pragma unroll_loop_start
		for ( int i = 0; i < NUM_HEMI_LIGHTS; i ++ ) {
			irradiance += getHemisphereLightIrradiance( hemisphereLights[ i ], geometryNormal );
		}
		#pragma unroll_loop_end
	#endif
	#if NUM_LIGHT_PROBE_GRIDS > 0
		vec3 probeWorldPos = ( ( vec4( geometryPosition, 1.0 ) - viewMatrix[ 3 ] ) * viewMatrix ).xyz;
		vec3 probeWorldNormal = transformNormalByInverseViewMatrix( geometryNormal, viewMatrix );
		int probeGrid = - 1;
		#pragma unroll_loop_start
		for ( int i = 0; i < NUM_LIGHT_PROBE_GRIDS; i ++ ) {
			if ( isInsideLightProbeGrid( probeWorldPos, probeWorldNormal, probesMin[ i ], probesMax[ i ], probesResolution[ i ] ) ) probeGrid = UNROLLED_LOOP_INDEX;
		}
		#pragma unroll_loop_end
		#pragma unroll_loop_start
		for ( int i = 0; i < NUM_LIGHT_PROBE_GRIDS; i ++ ) {
			if ( probeGrid == UNROLLED_LOOP_INDEX ) irradiance += getLightProbeGridIrradiance( probesSH[ i ], probesMin[ i ], probesMax[ i ], probesResolution[ i ], probeWorldPos, probeWorldNormal );
		}
		#pragma unroll_loop_end
	#endif
#endif
#if defined( RE_IndirectSpecular )
	vec3 radiance = vec3( 0.0 );
	vec3 clearcoatRadiance = vec3( 0.0 );
#endif`,Gm=`#if defined( RE_IndirectDiffuse )
	#ifdef USE_LIGHTMAP
		vec4 lightMapTexel = texture2D( lightMap, vLightMapUv );
		vec3 lightMapIrradiance = lightMapTexel.rgb * lightMapIntensity;
		irradiance += lightMapIrradiance;
	#endif
	#if defined( USE_ENVMAP ) && defined( ENVMAP_TYPE_PMREM )
		#if defined( STANDARD ) || defined( LAMBERT ) || defined( PHONG )
			iblIrradiance += getIBLIrradiance( geometryNormal );
		#endif
	#endif
#endif
#if defined( USE_ENVMAP ) && defined( RE_IndirectSpecular )
	#ifdef USE_ANISOTROPY
		vec3 iblRadiance = getIBLAnisotropyRadiance( geometryViewDir, geometryNormal, material.roughness, material.anisotropyB, material.anisotropy );
	#else
		vec3 iblRadiance = getIBLRadiance( geometryViewDir, geometryNormal, material.roughness );
	#endif
	#ifdef USE_RETROREFLECTION
		#ifdef USE_ANISOTROPY
			vec3 retroIBLRadiance = getIBLAnisotropyRetroRadiance( geometryViewDir, geometryNormal, material.roughness, material.anisotropyB, material.anisotropy );
		#else
			vec3 retroIBLRadiance = getIBLRetroRadiance( geometryViewDir, geometryNormal, material.roughness );
		#endif
		iblRadiance = mix( iblRadiance, retroIBLRadiance, saturate( material.retroreflectivity ) );
	#endif
	radiance += iblRadiance;
	#ifdef USE_CLEARCOAT
		clearcoatRadiance += getIBLRadiance( geometryViewDir, geometryClearcoatNormal, material.clearcoatRoughness );
	#endif
#endif`,Vm=`#if defined( RE_IndirectDiffuse )
	#if defined( LAMBERT ) || defined( PHONG )
		irradiance += iblIrradiance;
	#endif
	RE_IndirectDiffuse( irradiance, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
#endif
#if defined( RE_IndirectSpecular )
	RE_IndirectSpecular( radiance, iblIrradiance, clearcoatRadiance, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
#endif`,Wm=`#if NUM_LIGHT_PROBE_GRIDS > 0
uniform highp sampler3D probesSH[ NUM_LIGHT_PROBE_GRIDS ];
uniform vec3 probesMin[ NUM_LIGHT_PROBE_GRIDS ];
uniform vec3 probesMax[ NUM_LIGHT_PROBE_GRIDS ];
uniform vec3 probesResolution[ NUM_LIGHT_PROBE_GRIDS ];
bool isInsideLightProbeGrid( vec3 worldPos, vec3 worldNormal, vec3 probesMin, vec3 probesMax, vec3 probesResolution ) {
	vec3 spacing = ( probesMax - probesMin ) / probesResolution;
	vec3 samplePos = worldPos + worldNormal * spacing * 0.5;
	vec3 margin = spacing * 0.01;
	return all( greaterThanEqual( samplePos, probesMin - margin ) ) && all( lessThanEqual( samplePos, probesMax + margin ) );
}
vec3 getLightProbeGridIrradiance( highp sampler3D probesSH, vec3 probesMin, vec3 probesMax, vec3 probesResolution, vec3 worldPos, vec3 worldNormal ) {
	vec3 res = probesResolution;
	vec3 gridRange = probesMax - probesMin;
	vec3 probeSpacing = gridRange / res;
	vec3 samplePos = worldPos + worldNormal * probeSpacing * 0.5;
	vec3 uvw = clamp( ( samplePos - probesMin ) / gridRange, 0.5 / res, 1.0 - 0.5 / res );
	float nz          = res.z;
	float paddedSlices = nz + 2.0;
	float atlasDepth  = 7.0 * paddedSlices;
	float uvZBase     = uvw.z * nz + 1.0;
	vec4 s0 = texture( probesSH, vec3( uvw.xy, ( uvZBase                       ) / atlasDepth ) );
	vec4 s1 = texture( probesSH, vec3( uvw.xy, ( uvZBase +       paddedSlices   ) / atlasDepth ) );
	vec4 s2 = texture( probesSH, vec3( uvw.xy, ( uvZBase + 2.0 * paddedSlices   ) / atlasDepth ) );
	vec4 s3 = texture( probesSH, vec3( uvw.xy, ( uvZBase + 3.0 * paddedSlices   ) / atlasDepth ) );
	vec4 s4 = texture( probesSH, vec3( uvw.xy, ( uvZBase + 4.0 * paddedSlices   ) / atlasDepth ) );
	vec4 s5 = texture( probesSH, vec3( uvw.xy, ( uvZBase + 5.0 * paddedSlices   ) / atlasDepth ) );
	vec4 s6 = texture( probesSH, vec3( uvw.xy, ( uvZBase + 6.0 * paddedSlices   ) / atlasDepth ) );
	vec3 c0 = s0.xyz;
	vec3 c1 = vec3( s0.w, s1.xy );
	vec3 c2 = vec3( s1.zw, s2.x );
	vec3 c3 = s2.yzw;
	vec3 c4 = s3.xyz;
	vec3 c5 = vec3( s3.w, s4.xy );
	vec3 c6 = vec3( s4.zw, s5.x );
	vec3 c7 = s5.yzw;
	vec3 c8 = s6.xyz;
	float x = worldNormal.x, y = worldNormal.y, z = worldNormal.z;
	vec3 result = c0 * 0.886227;
	result += c1 * 2.0 * 0.511664 * y;
	result += c2 * 2.0 * 0.511664 * z;
	result += c3 * 2.0 * 0.511664 * x;
	result += c4 * 2.0 * 0.429043 * x * y;
	result += c5 * 2.0 * 0.429043 * y * z;
	result += c6 * ( 0.743125 * z * z - 0.247708 );
	result += c7 * 2.0 * 0.429043 * x * z;
	result += c8 * 0.429043 * ( x * x - y * y );
	return max( result, vec3( 0.0 ) );
}
#endif`,Xm=`#if defined( USE_LOGARITHMIC_DEPTH_BUFFER )
	gl_FragDepth = vIsPerspective == 0.0 ? gl_FragCoord.z : log2( vFragDepth ) * logDepthBufFC * 0.5;
#endif`,qm=`#if defined( USE_LOGARITHMIC_DEPTH_BUFFER )
	uniform float logDepthBufFC;
	varying float vFragDepth;
	varying float vIsPerspective;
#endif`,$m=`#ifdef USE_LOGARITHMIC_DEPTH_BUFFER
	varying float vFragDepth;
	varying float vIsPerspective;
#endif`,Ym=`#ifdef USE_LOGARITHMIC_DEPTH_BUFFER
	vFragDepth = 1.0 + gl_Position.w;
	vIsPerspective = float( isPerspectiveMatrix( projectionMatrix ) );
#endif`,Km=`#ifdef USE_MAP
	vec4 sampledDiffuseColor = texture2D( map, vMapUv );
	#ifdef DECODE_VIDEO_TEXTURE
		sampledDiffuseColor = sRGBTransferEOTF( sampledDiffuseColor );
	#endif
	diffuseColor *= sampledDiffuseColor;
#endif`,Zm=`#ifdef USE_MAP
	uniform sampler2D map;
#endif`,Jm=`#if defined( USE_MAP ) || defined( USE_ALPHAMAP )
	#if defined( USE_POINTS_UV )
		vec2 uv = vUv;
	#else
		vec2 uv = ( uvTransform * vec3( gl_PointCoord.x, 1.0 - gl_PointCoord.y, 1 ) ).xy;
	#endif
#endif
#ifdef USE_MAP
	diffuseColor *= texture2D( map, uv );
#endif
#ifdef USE_ALPHAMAP
	diffuseColor.a *= texture2D( alphaMap, uv ).g;
#endif`,Qm=`#if defined( USE_POINTS_UV )
	varying vec2 vUv;
#else
	#if defined( USE_MAP ) || defined( USE_ALPHAMAP )
		uniform mat3 uvTransform;
	#endif
#endif
#ifdef USE_MAP
	uniform sampler2D map;
#endif
#ifdef USE_ALPHAMAP
	uniform sampler2D alphaMap;
#endif`,jm=`float metalnessFactor = metalness;
#ifdef USE_METALNESSMAP
	vec4 texelMetalness = texture2D( metalnessMap, vMetalnessMapUv );
	metalnessFactor *= texelMetalness.b;
#endif`,t_=`#ifdef USE_METALNESSMAP
	uniform sampler2D metalnessMap;
#endif`,e_=`#ifdef USE_INSTANCING_MORPH
	float morphTargetInfluences[ MORPHTARGETS_COUNT ];
	float morphTargetBaseInfluence = texelFetch( morphTexture, ivec2( 0, gl_InstanceID ), 0 ).r;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		morphTargetInfluences[i] =  texelFetch( morphTexture, ivec2( i + 1, gl_InstanceID ), 0 ).r;
	}
#endif`,n_=`#if defined( USE_MORPHCOLORS )
	#if defined( USE_COLOR_ALPHA )
		vColor *= morphTargetBaseInfluence;
	#elif defined( USE_COLOR )
		vColor.rgb *= morphTargetBaseInfluence;
	#endif
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		#if defined( USE_COLOR_ALPHA )
			if ( morphTargetInfluences[ i ] != 0.0 ) vColor += getMorph( gl_VertexID, i, 2 ) * morphTargetInfluences[ i ];
		#elif defined( USE_COLOR )
			if ( morphTargetInfluences[ i ] != 0.0 ) vColor.rgb += getMorph( gl_VertexID, i, 2 ).rgb * morphTargetInfluences[ i ];
		#endif
	}
#endif`,i_=`#ifdef USE_MORPHNORMALS
	objectNormal *= morphTargetBaseInfluence;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		if ( morphTargetInfluences[ i ] != 0.0 ) objectNormal += getMorph( gl_VertexID, i, 1 ).xyz * morphTargetInfluences[ i ];
	}
#endif`,s_=`#ifdef USE_MORPHTARGETS
	#ifndef USE_INSTANCING_MORPH
		uniform float morphTargetBaseInfluence;
		uniform float morphTargetInfluences[ MORPHTARGETS_COUNT ];
	#endif
	uniform sampler2DArray morphTargetsTexture;
	uniform ivec2 morphTargetsTextureSize;
	vec4 getMorph( const in int vertexIndex, const in int morphTargetIndex, const in int offset ) {
		int texelIndex = vertexIndex * MORPHTARGETS_TEXTURE_STRIDE + offset;
		int y = texelIndex / morphTargetsTextureSize.x;
		int x = texelIndex - y * morphTargetsTextureSize.x;
		ivec3 morphUV = ivec3( x, y, morphTargetIndex );
		return texelFetch( morphTargetsTexture, morphUV, 0 );
	}
#endif`,r_=`#ifdef USE_MORPHTARGETS
	transformed *= morphTargetBaseInfluence;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		if ( morphTargetInfluences[ i ] != 0.0 ) transformed += getMorph( gl_VertexID, i, 0 ).xyz * morphTargetInfluences[ i ];
	}
#endif`,a_=`float faceDirection = gl_FrontFacing ? 1.0 : - 1.0;
#ifdef FLAT_SHADED
	vec3 fdx = dFdx( vViewPosition );
	vec3 fdy = dFdy( vViewPosition );
	vec3 normal = normalize( cross( fdx, fdy ) );
#else
	vec3 normal = normalize( vNormal );
	#ifdef DOUBLE_SIDED
		normal *= faceDirection;
	#endif
#endif
#if defined( USE_NORMALMAP_TANGENTSPACE ) || defined( USE_CLEARCOAT_NORMALMAP ) || defined( USE_ANISOTROPY )
	#ifdef USE_TANGENT
		mat3 tbn = mat3( normalize( vTangent ), normalize( vBitangent ), normal );
	#else
		mat3 tbn = getTangentFrame( - vViewPosition, normal,
		#if defined( USE_NORMALMAP )
			vNormalMapUv
		#elif defined( USE_CLEARCOAT_NORMALMAP )
			vClearcoatNormalMapUv
		#else
			vUv
		#endif
		);
	#endif
	#ifdef DOUBLE_SIDED
		tbn[0] *= faceDirection;
		tbn[1] *= faceDirection;
	#endif
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	#ifdef USE_TANGENT
		mat3 tbn2 = mat3( normalize( vTangent ), normalize( vBitangent ), normal );
	#else
		mat3 tbn2 = getTangentFrame( - vViewPosition, normal, vClearcoatNormalMapUv );
	#endif
	#ifdef DOUBLE_SIDED
		tbn2[0] *= faceDirection;
		tbn2[1] *= faceDirection;
	#endif
#endif
vec3 nonPerturbedNormal = normal;`,o_=`#ifdef USE_NORMALMAP_OBJECTSPACE
	normal = texture2D( normalMap, vNormalMapUv ).xyz * 2.0 - 1.0;
	#ifdef FLIP_SIDED
		normal = - normal;
	#endif
	#ifdef DOUBLE_SIDED
		normal = normal * faceDirection;
	#endif
	normal = normalize( normalMatrix * normal );
#elif defined( USE_NORMALMAP_TANGENTSPACE )
	vec3 mapN = texture2D( normalMap, vNormalMapUv ).xyz * 2.0 - 1.0;
	#if defined( USE_PACKED_NORMALMAP )
		mapN = vec3( mapN.xy, sqrt( saturate( 1.0 - dot( mapN.xy, mapN.xy ) ) ) );
	#endif
	mapN.xy *= normalScale;
	normal = normalize( tbn * mapN );
#elif defined( USE_BUMPMAP )
	normal = perturbNormalArb( - vViewPosition, normal, dHdxy_fwd(), faceDirection );
#endif`,l_=`#ifndef FLAT_SHADED
	varying vec3 vNormal;
	#ifdef USE_TANGENT
		varying vec3 vTangent;
		varying vec3 vBitangent;
	#endif
#endif`,c_=`#ifndef FLAT_SHADED
	varying vec3 vNormal;
	#ifdef USE_TANGENT
		varying vec3 vTangent;
		varying vec3 vBitangent;
	#endif
#endif`,u_=`#ifndef FLAT_SHADED
	vNormal = normalize( transformedNormal );
	#ifdef USE_TANGENT
		vTangent = normalize( transformedTangent );
		vBitangent = normalize( cross( vNormal, vTangent ) * tangent.w );
		#ifdef FLIP_SIDED
			vBitangent = - vBitangent;
		#endif
	#endif
#endif`,h_=`#ifdef USE_NORMALMAP
	uniform sampler2D normalMap;
	uniform vec2 normalScale;
#endif
#ifdef USE_NORMALMAP_OBJECTSPACE
	uniform mat3 normalMatrix;
#endif
#if ! defined ( USE_TANGENT ) && ( defined ( USE_NORMALMAP_TANGENTSPACE ) || defined ( USE_CLEARCOAT_NORMALMAP ) || defined( USE_ANISOTROPY ) )
	mat3 getTangentFrame( vec3 eye_pos, vec3 surf_norm, vec2 uv ) {
		vec3 q0 = dFdx( eye_pos.xyz );
		vec3 q1 = dFdy( eye_pos.xyz );
		vec2 st0 = dFdx( uv.st );
		vec2 st1 = dFdy( uv.st );
		vec3 N = surf_norm;
		vec3 q1perp = cross( q1, N );
		vec3 q0perp = cross( N, q0 );
		vec3 T = q1perp * st0.x + q0perp * st1.x;
		vec3 B = q1perp * st0.y + q0perp * st1.y;
		float det = max( dot( T, T ), dot( B, B ) );
		float scale = ( det == 0.0 ) ? 0.0 : inversesqrt( det );
		return mat3( T * scale, B * scale, N );
	}
#endif`,d_=`#ifdef USE_CLEARCOAT
	vec3 clearcoatNormal = nonPerturbedNormal;
#endif`,f_=`#ifdef USE_CLEARCOAT_NORMALMAP
	vec3 clearcoatMapN = texture2D( clearcoatNormalMap, vClearcoatNormalMapUv ).xyz * 2.0 - 1.0;
	clearcoatMapN.xy *= clearcoatNormalScale;
	clearcoatNormal = normalize( tbn2 * clearcoatMapN );
#endif`,p_=`#ifdef USE_CLEARCOATMAP
	uniform sampler2D clearcoatMap;
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	uniform sampler2D clearcoatNormalMap;
	uniform vec2 clearcoatNormalScale;
#endif
#ifdef USE_CLEARCOAT_ROUGHNESSMAP
	uniform sampler2D clearcoatRoughnessMap;
#endif`,m_=`#ifdef USE_IRIDESCENCEMAP
	uniform sampler2D iridescenceMap;
#endif
#ifdef USE_IRIDESCENCE_THICKNESSMAP
	uniform sampler2D iridescenceThicknessMap;
#endif`,__=`#ifdef OPAQUE
diffuseColor.a = 1.0;
#endif
#ifdef USE_TRANSMISSION
diffuseColor.a *= material.transmissionAlpha;
#endif
gl_FragColor = vec4( outgoingLight, diffuseColor.a );`,g_=`vec3 packNormalToRGB( const in vec3 normal ) {
	return normalize( normal ) * 0.5 + 0.5;
}
vec3 unpackRGBToNormal( const in vec3 rgb ) {
	return 2.0 * rgb.xyz - 1.0;
}
const float PackUpscale = 256. / 255.;const float UnpackDownscale = 255. / 256.;const float ShiftRight8 = 1. / 256.;
const float Inv255 = 1. / 255.;
const vec4 PackFactors = vec4( 1.0, 256.0, 256.0 * 256.0, 256.0 * 256.0 * 256.0 );
const vec2 UnpackFactors2 = vec2( UnpackDownscale, 1.0 / PackFactors.g );
const vec3 UnpackFactors3 = vec3( UnpackDownscale / PackFactors.rg, 1.0 / PackFactors.b );
const vec4 UnpackFactors4 = vec4( UnpackDownscale / PackFactors.rgb, 1.0 / PackFactors.a );
vec4 packDepthToRGBA( const in float v ) {
	if( v <= 0.0 )
		return vec4( 0., 0., 0., 0. );
	if( v >= 1.0 )
		return vec4( 1., 1., 1., 1. );
	float vuf;
	float af = modf( v * PackFactors.a, vuf );
	float bf = modf( vuf * ShiftRight8, vuf );
	float gf = modf( vuf * ShiftRight8, vuf );
	return vec4( vuf * Inv255, gf * PackUpscale, bf * PackUpscale, af );
}
vec3 packDepthToRGB( const in float v ) {
	if( v <= 0.0 )
		return vec3( 0., 0., 0. );
	if( v >= 1.0 )
		return vec3( 1., 1., 1. );
	float vuf;
	float bf = modf( v * PackFactors.b, vuf );
	float gf = modf( vuf * ShiftRight8, vuf );
	return vec3( vuf * Inv255, gf * PackUpscale, bf );
}
vec2 packDepthToRG( const in float v ) {
	if( v <= 0.0 )
		return vec2( 0., 0. );
	if( v >= 1.0 )
		return vec2( 1., 1. );
	float vuf;
	float gf = modf( v * 256., vuf );
	return vec2( vuf * Inv255, gf );
}
float unpackRGBAToDepth( const in vec4 v ) {
	return dot( v, UnpackFactors4 );
}
float unpackRGBToDepth( const in vec3 v ) {
	return dot( v, UnpackFactors3 );
}
float unpackRGToDepth( const in vec2 v ) {
	return v.r * UnpackFactors2.r + v.g * UnpackFactors2.g;
}
vec4 pack2HalfToRGBA( const in vec2 v ) {
	vec4 r = vec4( v.x, fract( v.x * 255.0 ), v.y, fract( v.y * 255.0 ) );
	return vec4( r.x - r.y / 255.0, r.y, r.z - r.w / 255.0, r.w );
}
vec2 unpackRGBATo2Half( const in vec4 v ) {
	return vec2( v.x + ( v.y / 255.0 ), v.z + ( v.w / 255.0 ) );
}
float viewZToOrthographicDepth( const in float viewZ, const in float near, const in float far ) {
	return ( viewZ + near ) / ( near - far );
}
float orthographicDepthToViewZ( const in float depth, const in float near, const in float far ) {
	#ifdef USE_REVERSED_DEPTH_BUFFER
	
		return depth * ( far - near ) - far;
	#else
		return depth * ( near - far ) - near;
	#endif
}
float viewZToPerspectiveDepth( const in float viewZ, const in float near, const in float far ) {
	return ( ( near + viewZ ) * far ) / ( ( far - near ) * viewZ );
}
float perspectiveDepthToViewZ( const in float depth, const in float near, const in float far ) {
	
	#ifdef USE_REVERSED_DEPTH_BUFFER
		return ( near * far ) / ( ( near - far ) * depth - near );
	#else
		return ( near * far ) / ( ( far - near ) * depth - far );
	#endif
}`,x_=`#ifdef PREMULTIPLIED_ALPHA
	gl_FragColor.rgb *= gl_FragColor.a;
#endif`,v_=`vec4 mvPosition = vec4( transformed, 1.0 );
#ifdef USE_BATCHING
	mvPosition = batchingMatrix * mvPosition;
#endif
#ifdef USE_INSTANCING
	mvPosition = instanceMatrix * mvPosition;
#endif
mvPosition = modelViewMatrix * mvPosition;
gl_Position = projectionMatrix * mvPosition;`,S_=`#ifdef DITHERING
	gl_FragColor.rgb = dithering( gl_FragColor.rgb );
#endif`,M_=`#ifdef DITHERING
	vec3 dithering( vec3 color ) {
		float grid_position = rand( gl_FragCoord.xy );
		vec3 dither_shift_RGB = vec3( 0.25 / 255.0, -0.25 / 255.0, 0.25 / 255.0 );
		dither_shift_RGB = mix( 2.0 * dither_shift_RGB, -2.0 * dither_shift_RGB, grid_position );
		return color + dither_shift_RGB;
	}
#endif`,y_=`float roughnessFactor = roughness;
#ifdef USE_ROUGHNESSMAP
	vec4 texelRoughness = texture2D( roughnessMap, vRoughnessMapUv );
	roughnessFactor *= texelRoughness.g;
#endif`,E_=`#ifdef USE_ROUGHNESSMAP
	uniform sampler2D roughnessMap;
#endif`,b_=`#if NUM_SPOT_LIGHT_COORDS > 0
	varying vec4 vSpotLightCoord[ NUM_SPOT_LIGHT_COORDS ];
#endif
#if NUM_SPOT_LIGHT_MAPS > 0
	uniform sampler2D spotLightMap[ NUM_SPOT_LIGHT_MAPS ];
#endif
#ifdef USE_SHADOWMAP
	#if NUM_SUN_LIGHT_SHADOWS > 0
		#define SUN_LIGHT_CASCADES 2
		#if defined( SHADOWMAP_TYPE_PCF )
			uniform sampler2DShadow sunShadowMap[ NUM_SUN_LIGHT_SHADOWS ];
		#else
			uniform sampler2D sunShadowMap[ NUM_SUN_LIGHT_SHADOWS ];
		#endif
		uniform mat4 sunShadowMatrix[ NUM_SUN_LIGHT_SHADOWS * SUN_LIGHT_CASCADES ];
		uniform vec4 sunShadowCascade[ NUM_SUN_LIGHT_SHADOWS * SUN_LIGHT_CASCADES ];
		varying vec4 vSunShadowWorldPosition;
		varying vec3 vSunShadowWorldNormal;
		struct SunLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
		};
		uniform SunLightShadow sunLightShadows[ NUM_SUN_LIGHT_SHADOWS ];
	#endif
	#if NUM_DIR_LIGHT_SHADOWS > 0
		#if defined( SHADOWMAP_TYPE_PCF )
			uniform sampler2DShadow directionalShadowMap[ NUM_DIR_LIGHT_SHADOWS ];
		#else
			uniform sampler2D directionalShadowMap[ NUM_DIR_LIGHT_SHADOWS ];
		#endif
		varying vec4 vDirectionalShadowCoord[ NUM_DIR_LIGHT_SHADOWS ];
		struct DirectionalLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
		};
		uniform DirectionalLightShadow directionalLightShadows[ NUM_DIR_LIGHT_SHADOWS ];
	#endif
	#if NUM_SPOT_LIGHT_SHADOWS > 0
		#if defined( SHADOWMAP_TYPE_PCF )
			uniform sampler2DShadow spotShadowMap[ NUM_SPOT_LIGHT_SHADOWS ];
		#else
			uniform sampler2D spotShadowMap[ NUM_SPOT_LIGHT_SHADOWS ];
		#endif
		struct SpotLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
		};
		uniform SpotLightShadow spotLightShadows[ NUM_SPOT_LIGHT_SHADOWS ];
	#endif
	#if NUM_POINT_LIGHT_SHADOWS > 0
		#if defined( SHADOWMAP_TYPE_PCF )
			uniform samplerCubeShadow pointShadowMap[ NUM_POINT_LIGHT_SHADOWS ];
		#elif defined( SHADOWMAP_TYPE_BASIC )
			uniform samplerCube pointShadowMap[ NUM_POINT_LIGHT_SHADOWS ];
		#endif
		varying vec4 vPointShadowCoord[ NUM_POINT_LIGHT_SHADOWS ];
		struct PointLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
			float shadowCameraNear;
			float shadowCameraFar;
		};
		uniform PointLightShadow pointLightShadows[ NUM_POINT_LIGHT_SHADOWS ];
	#endif
	#if defined( SHADOWMAP_TYPE_PCF )
		float interleavedGradientNoise( vec2 position ) {
			return fract( 52.9829189 * fract( dot( position, vec2( 0.06711056, 0.00583715 ) ) ) );
		}
		vec2 vogelDiskSample( int sampleIndex, int samplesCount, float phi ) {
			const float goldenAngle = 2.399963229728653;
			float r = sqrt( ( float( sampleIndex ) + 0.5 ) / float( samplesCount ) );
			float theta = float( sampleIndex ) * goldenAngle + phi;
			return vec2( cos( theta ), sin( theta ) ) * r;
		}
	#endif
	#if defined( SHADOWMAP_TYPE_PCF )
		float getShadow( sampler2DShadow shadowMap, vec2 shadowMapSize, float shadowIntensity, float shadowBias, float shadowRadius, vec4 shadowCoord ) {
			float shadow = 1.0;
			shadowCoord.xyz /= shadowCoord.w;
			#ifdef USE_REVERSED_DEPTH_BUFFER
				shadowCoord.z -= shadowBias;
			#else
				shadowCoord.z += shadowBias;
			#endif
			bool inFrustum = shadowCoord.x >= 0.0 && shadowCoord.x <= 1.0 && shadowCoord.y >= 0.0 && shadowCoord.y <= 1.0;
			bool frustumTest = inFrustum && shadowCoord.z <= 1.0;
			if ( frustumTest ) {
				vec2 texelSize = vec2( 1.0 ) / shadowMapSize;
				vec2 radius = shadowRadius * texelSize;
				float phi = interleavedGradientNoise( gl_FragCoord.xy ) * PI2;
				shadow = (
					texture( shadowMap, vec3( shadowCoord.xy + vogelDiskSample( 0, 5, phi ) * radius, shadowCoord.z ) ) +
					texture( shadowMap, vec3( shadowCoord.xy + vogelDiskSample( 1, 5, phi ) * radius, shadowCoord.z ) ) +
					texture( shadowMap, vec3( shadowCoord.xy + vogelDiskSample( 2, 5, phi ) * radius, shadowCoord.z ) ) +
					texture( shadowMap, vec3( shadowCoord.xy + vogelDiskSample( 3, 5, phi ) * radius, shadowCoord.z ) ) +
					texture( shadowMap, vec3( shadowCoord.xy + vogelDiskSample( 4, 5, phi ) * radius, shadowCoord.z ) )
				) * 0.2;
			}
			return mix( 1.0, shadow, shadowIntensity );
		}
	#elif defined( SHADOWMAP_TYPE_VSM )
		float getShadow( sampler2D shadowMap, vec2 shadowMapSize, float shadowIntensity, float shadowBias, float shadowRadius, vec4 shadowCoord ) {
			float shadow = 1.0;
			shadowCoord.xyz /= shadowCoord.w;
			#ifdef USE_REVERSED_DEPTH_BUFFER
				shadowCoord.z -= shadowBias;
			#else
				shadowCoord.z += shadowBias;
			#endif
			bool inFrustum = shadowCoord.x >= 0.0 && shadowCoord.x <= 1.0 && shadowCoord.y >= 0.0 && shadowCoord.y <= 1.0;
			bool frustumTest = inFrustum && shadowCoord.z <= 1.0;
			if ( frustumTest ) {
				vec2 distribution = texture2D( shadowMap, shadowCoord.xy ).rg;
				float mean = distribution.x;
				float variance = distribution.y * distribution.y;
				#ifdef USE_REVERSED_DEPTH_BUFFER
					float hard_shadow = step( mean, shadowCoord.z );
				#else
					float hard_shadow = step( shadowCoord.z, mean );
				#endif
				
				if ( hard_shadow == 1.0 ) {
					shadow = 1.0;
				} else {
					variance = max( variance, 0.0000001 );
					float d = shadowCoord.z - mean;
					float p_max = variance / ( variance + d * d );
					p_max = clamp( ( p_max - 0.3 ) / 0.65, 0.0, 1.0 );
					shadow = max( hard_shadow, p_max );
				}
			}
			return mix( 1.0, shadow, shadowIntensity );
		}
	#else
		float getShadow( sampler2D shadowMap, vec2 shadowMapSize, float shadowIntensity, float shadowBias, float shadowRadius, vec4 shadowCoord ) {
			float shadow = 1.0;
			shadowCoord.xyz /= shadowCoord.w;
			#ifdef USE_REVERSED_DEPTH_BUFFER
				shadowCoord.z -= shadowBias;
			#else
				shadowCoord.z += shadowBias;
			#endif
			bool inFrustum = shadowCoord.x >= 0.0 && shadowCoord.x <= 1.0 && shadowCoord.y >= 0.0 && shadowCoord.y <= 1.0;
			bool frustumTest = inFrustum && shadowCoord.z <= 1.0;
			if ( frustumTest ) {
				float depth = texture2D( shadowMap, shadowCoord.xy ).r;
				#ifdef USE_REVERSED_DEPTH_BUFFER
					shadow = step( depth, shadowCoord.z );
				#else
					shadow = step( shadowCoord.z, depth );
				#endif
			}
			return mix( 1.0, shadow, shadowIntensity );
		}
	#endif
	#if NUM_SUN_LIGHT_SHADOWS > 0
		float getSunShadow(
			#if defined( SHADOWMAP_TYPE_PCF )
				sampler2DShadow shadowMap,
			#else
				sampler2D shadowMap,
			#endif
			SunLightShadow sunLightShadow,
			int shadowIndex
		) {
			vec4 shadowWorldPosition = vec4( vSunShadowWorldPosition.xyz + vSunShadowWorldNormal * sunLightShadow.shadowNormalBias, 1.0 );
			float viewDepth = vSunShadowWorldPosition.w;
			int cascadeOffset = shadowIndex * SUN_LIGHT_CASCADES;
			float shadow = 1.0;
			for ( int i = SUN_LIGHT_CASCADES - 1; i >= 0; i -- ) {
				vec4 cascade = sunShadowCascade[ cascadeOffset + i ];
				if ( viewDepth >= cascade.x && viewDepth < cascade.y ) {
					float cascadeShadow = getShadow(
						shadowMap,
						sunLightShadow.shadowMapSize,
						sunLightShadow.shadowIntensity,
						sunLightShadow.shadowBias,
						sunLightShadow.shadowRadius,
						sunShadowMatrix[ cascadeOffset + i ] * shadowWorldPosition
					);
					shadow = mix( cascadeShadow, shadow, smoothstep( cascade.z, cascade.y, viewDepth ) );
				}
			}
			return shadow;
		}
	#endif
	#if NUM_POINT_LIGHT_SHADOWS > 0
	#if defined( SHADOWMAP_TYPE_PCF )
	float getPointShadow( samplerCubeShadow shadowMap, vec2 shadowMapSize, float shadowIntensity, float shadowBias, float shadowRadius, vec4 shadowCoord, float shadowCameraNear, float shadowCameraFar ) {
		float shadow = 1.0;
		vec3 lightToPosition = shadowCoord.xyz;
		vec3 bd3D = normalize( lightToPosition );
		vec3 absVec = abs( lightToPosition );
		float viewSpaceZ = max( max( absVec.x, absVec.y ), absVec.z );
		if ( viewSpaceZ - shadowCameraFar <= 0.0 && viewSpaceZ - shadowCameraNear >= 0.0 ) {
			float lightDistance = length( lightToPosition );
			float depthRange = shadowCameraFar - shadowCameraNear;
			#ifdef USE_REVERSED_DEPTH_BUFFER
				float depthA = - shadowCameraNear / depthRange - shadowBias;
				float depthB = shadowCameraNear * shadowCameraFar / ( depthRange * lightDistance );
			#else
				float depthA = shadowCameraFar / depthRange + shadowBias;
				float depthB = - shadowCameraNear * shadowCameraFar / ( depthRange * lightDistance );
			#endif
			float texelSize = shadowRadius / shadowMapSize.x;
			vec3 absDir = abs( bd3D );
			vec3 tangent = absDir.x > absDir.z ? vec3( 0.0, 1.0, 0.0 ) : vec3( 1.0, 0.0, 0.0 );
			tangent = normalize( cross( bd3D, tangent ) );
			vec3 bitangent = cross( bd3D, tangent );
			float phi = interleavedGradientNoise( gl_FragCoord.xy ) * PI2;
			shadow = 0.0;
			for ( int i = 0; i < 5; i ++ ) {
				vec2 offset = vogelDiskSample( i, 5, phi );
				vec3 direction = bd3D + ( tangent * offset.x + bitangent * offset.y ) * texelSize;
				vec3 absDirection = abs( direction );
				float dp = depthA + depthB / max( max( absDirection.x, absDirection.y ), absDirection.z );
				shadow += texture( shadowMap, vec4( direction, dp ) );
			}
			shadow *= 0.2;
		}
		return mix( 1.0, shadow, shadowIntensity );
	}
	#elif defined( SHADOWMAP_TYPE_BASIC )
	float getPointShadow( samplerCube shadowMap, vec2 shadowMapSize, float shadowIntensity, float shadowBias, float shadowRadius, vec4 shadowCoord, float shadowCameraNear, float shadowCameraFar ) {
		float shadow = 1.0;
		vec3 lightToPosition = shadowCoord.xyz;
		vec3 absVec = abs( lightToPosition );
		float viewSpaceZ = max( max( absVec.x, absVec.y ), absVec.z );
		if ( viewSpaceZ - shadowCameraFar <= 0.0 && viewSpaceZ - shadowCameraNear >= 0.0 ) {
			float dp = ( shadowCameraFar * ( viewSpaceZ - shadowCameraNear ) ) / ( viewSpaceZ * ( shadowCameraFar - shadowCameraNear ) );
			dp += shadowBias;
			vec3 bd3D = normalize( lightToPosition );
			float depth = textureCube( shadowMap, bd3D ).r;
			#ifdef USE_REVERSED_DEPTH_BUFFER
				depth = 1.0 - depth;
			#endif
			shadow = step( dp, depth );
		}
		return mix( 1.0, shadow, shadowIntensity );
	}
	#endif
	#endif
#endif`,T_=`#if NUM_SPOT_LIGHT_COORDS > 0
	uniform mat4 spotLightMatrix[ NUM_SPOT_LIGHT_COORDS ];
	varying vec4 vSpotLightCoord[ NUM_SPOT_LIGHT_COORDS ];
#endif
#ifdef USE_SHADOWMAP
	#if NUM_SUN_LIGHT_SHADOWS > 0
		varying vec4 vSunShadowWorldPosition;
		varying vec3 vSunShadowWorldNormal;
	#endif
	#if NUM_DIR_LIGHT_SHADOWS > 0
		uniform mat4 directionalShadowMatrix[ NUM_DIR_LIGHT_SHADOWS ];
		varying vec4 vDirectionalShadowCoord[ NUM_DIR_LIGHT_SHADOWS ];
		struct DirectionalLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
		};
		uniform DirectionalLightShadow directionalLightShadows[ NUM_DIR_LIGHT_SHADOWS ];
	#endif
	#if NUM_SPOT_LIGHT_SHADOWS > 0
		struct SpotLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
		};
		uniform SpotLightShadow spotLightShadows[ NUM_SPOT_LIGHT_SHADOWS ];
	#endif
	#if NUM_POINT_LIGHT_SHADOWS > 0
		uniform mat4 pointShadowMatrix[ NUM_POINT_LIGHT_SHADOWS ];
		varying vec4 vPointShadowCoord[ NUM_POINT_LIGHT_SHADOWS ];
		struct PointLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
			float shadowCameraNear;
			float shadowCameraFar;
		};
		uniform PointLightShadow pointLightShadows[ NUM_POINT_LIGHT_SHADOWS ];
	#endif
#endif`,w_=`#if ( defined( USE_SHADOWMAP ) && ( NUM_DIR_LIGHT_SHADOWS > 0 || NUM_SUN_LIGHT_SHADOWS > 0 || NUM_POINT_LIGHT_SHADOWS > 0 ) ) || ( NUM_SPOT_LIGHT_COORDS > 0 )
	#ifdef HAS_NORMAL
		vec3 shadowWorldNormal = transformNormalByInverseViewMatrix( transformedNormal, viewMatrix );
	#else
		vec3 shadowWorldNormal = vec3( 0.0 );
	#endif
	vec4 shadowWorldPosition;
#endif
#if defined( USE_SHADOWMAP )
	#if NUM_SUN_LIGHT_SHADOWS > 0
		vSunShadowWorldPosition = vec4( worldPosition.xyz, - mvPosition.z );
		vSunShadowWorldNormal = shadowWorldNormal;
	#endif
	#if NUM_DIR_LIGHT_SHADOWS > 0
		#pragma unroll_loop_start
		for ( int i = 0; i < NUM_DIR_LIGHT_SHADOWS; i ++ ) {
			shadowWorldPosition = worldPosition + vec4( shadowWorldNormal * directionalLightShadows[ i ].shadowNormalBias, 0 );
			vDirectionalShadowCoord[ i ] = directionalShadowMatrix[ i ] * shadowWorldPosition;
		}
		#pragma unroll_loop_end
	#endif
	#if NUM_POINT_LIGHT_SHADOWS > 0
		#pragma unroll_loop_start
		for ( int i = 0; i < NUM_POINT_LIGHT_SHADOWS; i ++ ) {
			shadowWorldPosition = worldPosition + vec4( shadowWorldNormal * pointLightShadows[ i ].shadowNormalBias, 0 );
			vPointShadowCoord[ i ] = pointShadowMatrix[ i ] * shadowWorldPosition;
		}
		#pragma unroll_loop_end
	#endif
#endif
#if NUM_SPOT_LIGHT_COORDS > 0
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_SPOT_LIGHT_COORDS; i ++ ) {
		shadowWorldPosition = worldPosition;
		#if ( defined( USE_SHADOWMAP ) && UNROLLED_LOOP_INDEX < NUM_SPOT_LIGHT_SHADOWS )
			shadowWorldPosition.xyz += shadowWorldNormal * spotLightShadows[ i ].shadowNormalBias;
		#endif
		vSpotLightCoord[ i ] = spotLightMatrix[ i ] * shadowWorldPosition;
	}
	#pragma unroll_loop_end
#endif`,A_=`float getShadowMask() {
	float shadow = 1.0;
	#ifdef USE_SHADOWMAP
	#if NUM_SUN_LIGHT_SHADOWS > 0
	SunLightShadow sunLight;
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_SUN_LIGHT_SHADOWS; i ++ ) {
		sunLight = sunLightShadows[ i ];
		shadow *= receiveShadow ? getSunShadow( sunShadowMap[ i ], sunLight, UNROLLED_LOOP_INDEX ) : 1.0;
	}
	#pragma unroll_loop_end
	#endif
	#if NUM_DIR_LIGHT_SHADOWS > 0
	DirectionalLightShadow directionalLight;
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_DIR_LIGHT_SHADOWS; i ++ ) {
		directionalLight = directionalLightShadows[ i ];
		shadow *= receiveShadow ? getShadow( directionalShadowMap[ i ], directionalLight.shadowMapSize, directionalLight.shadowIntensity, directionalLight.shadowBias, directionalLight.shadowRadius, vDirectionalShadowCoord[ i ] ) : 1.0;
	}
	#pragma unroll_loop_end
	#endif
	#if NUM_SPOT_LIGHT_SHADOWS > 0
	SpotLightShadow spotLight;
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_SPOT_LIGHT_SHADOWS; i ++ ) {
		spotLight = spotLightShadows[ i ];
		shadow *= receiveShadow ? getShadow( spotShadowMap[ i ], spotLight.shadowMapSize, spotLight.shadowIntensity, spotLight.shadowBias, spotLight.shadowRadius, vSpotLightCoord[ i ] ) : 1.0;
	}
	#pragma unroll_loop_end
	#endif
	#if NUM_POINT_LIGHT_SHADOWS > 0 && ( defined( SHADOWMAP_TYPE_PCF ) || defined( SHADOWMAP_TYPE_BASIC ) )
	PointLightShadow pointLight;
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_POINT_LIGHT_SHADOWS; i ++ ) {
		pointLight = pointLightShadows[ i ];
		shadow *= receiveShadow ? getPointShadow( pointShadowMap[ i ], pointLight.shadowMapSize, pointLight.shadowIntensity, pointLight.shadowBias, pointLight.shadowRadius, vPointShadowCoord[ i ], pointLight.shadowCameraNear, pointLight.shadowCameraFar ) : 1.0;
	}
	#pragma unroll_loop_end
	#endif
	#endif
	return shadow;
}`,R_=`#ifdef USE_SKINNING
	mat4 boneMatX = getBoneMatrix( skinIndex.x );
	mat4 boneMatY = getBoneMatrix( skinIndex.y );
	mat4 boneMatZ = getBoneMatrix( skinIndex.z );
	mat4 boneMatW = getBoneMatrix( skinIndex.w );
#endif`,C_=`#ifdef USE_SKINNING
	uniform mat4 bindMatrix;
	uniform mat4 bindMatrixInverse;
	uniform highp sampler2D boneTexture;
	mat4 getBoneMatrix( const in float i ) {
		int size = textureSize( boneTexture, 0 ).x;
		int j = int( i ) * 4;
		int x = j % size;
		int y = j / size;
		vec4 v1 = texelFetch( boneTexture, ivec2( x, y ), 0 );
		vec4 v2 = texelFetch( boneTexture, ivec2( x + 1, y ), 0 );
		vec4 v3 = texelFetch( boneTexture, ivec2( x + 2, y ), 0 );
		vec4 v4 = texelFetch( boneTexture, ivec2( x + 3, y ), 0 );
		return mat4( v1, v2, v3, v4 );
	}
#endif`,P_=`#ifdef USE_SKINNING
	vec4 skinVertex = bindMatrix * vec4( transformed, 1.0 );
	vec4 skinned = vec4( 0.0 );
	skinned += boneMatX * skinVertex * skinWeight.x;
	skinned += boneMatY * skinVertex * skinWeight.y;
	skinned += boneMatZ * skinVertex * skinWeight.z;
	skinned += boneMatW * skinVertex * skinWeight.w;
	transformed = ( bindMatrixInverse * skinned ).xyz;
#endif`,L_=`#ifdef USE_SKINNING
	mat4 skinMatrix = mat4( 0.0 );
	skinMatrix += skinWeight.x * boneMatX;
	skinMatrix += skinWeight.y * boneMatY;
	skinMatrix += skinWeight.z * boneMatZ;
	skinMatrix += skinWeight.w * boneMatW;
	skinMatrix = bindMatrixInverse * skinMatrix * bindMatrix;
	objectNormal = vec4( skinMatrix * vec4( objectNormal, 0.0 ) ).xyz;
	#ifdef USE_TANGENT
		objectTangent = vec4( skinMatrix * vec4( objectTangent, 0.0 ) ).xyz;
	#endif
#endif`,D_=`float specularStrength;
#ifdef USE_SPECULARMAP
	vec4 texelSpecular = texture2D( specularMap, vSpecularMapUv );
	specularStrength = texelSpecular.r;
#else
	specularStrength = 1.0;
#endif`,N_=`#ifdef USE_SPECULARMAP
	uniform sampler2D specularMap;
#endif`,I_=`#if defined( TONE_MAPPING )
	gl_FragColor.rgb = toneMapping( gl_FragColor.rgb );
#endif`,U_=`#ifndef saturate
#define saturate( a ) clamp( a, 0.0, 1.0 )
#endif
uniform float toneMappingExposure;
vec3 LinearToneMapping( vec3 color ) {
	return saturate( toneMappingExposure * color );
}
vec3 ReinhardToneMapping( vec3 color ) {
	color *= toneMappingExposure;
	return saturate( color / ( vec3( 1.0 ) + color ) );
}
vec3 CineonToneMapping( vec3 color ) {
	color *= toneMappingExposure;
	color = max( vec3( 0.0 ), color - 0.004 );
	return pow( ( color * ( 6.2 * color + 0.5 ) ) / ( color * ( 6.2 * color + 1.7 ) + 0.06 ), vec3( 2.2 ) );
}
vec3 RRTAndODTFit( vec3 v ) {
	vec3 a = v * ( v + 0.0245786 ) - 0.000090537;
	vec3 b = v * ( 0.983729 * v + 0.4329510 ) + 0.238081;
	return a / b;
}
vec3 ACESFilmicToneMapping( vec3 color ) {
	const mat3 ACESInputMat = mat3(
		vec3( 0.59719, 0.07600, 0.02840 ),		vec3( 0.35458, 0.90834, 0.13383 ),
		vec3( 0.04823, 0.01566, 0.83777 )
	);
	const mat3 ACESOutputMat = mat3(
		vec3(  1.60475, -0.10208, -0.00327 ),		vec3( -0.53108,  1.10813, -0.07276 ),
		vec3( -0.07367, -0.00605,  1.07602 )
	);
	color *= toneMappingExposure / 0.6;
	color = ACESInputMat * color;
	color = RRTAndODTFit( color );
	color = ACESOutputMat * color;
	return saturate( color );
}
const mat3 LINEAR_REC2020_TO_LINEAR_SRGB = mat3(
	vec3( 1.6605, - 0.1246, - 0.0182 ),
	vec3( - 0.5876, 1.1329, - 0.1006 ),
	vec3( - 0.0728, - 0.0083, 1.1187 )
);
const mat3 LINEAR_SRGB_TO_LINEAR_REC2020 = mat3(
	vec3( 0.6274, 0.0691, 0.0164 ),
	vec3( 0.3293, 0.9195, 0.0880 ),
	vec3( 0.0433, 0.0113, 0.8956 )
);
vec3 agxDefaultContrastApprox( vec3 x ) {
	vec3 x2 = x * x;
	vec3 x4 = x2 * x2;
	return + 15.5 * x4 * x2
		- 40.14 * x4 * x
		+ 31.96 * x4
		- 6.868 * x2 * x
		+ 0.4298 * x2
		+ 0.1191 * x
		- 0.00232;
}
vec3 AgXToneMapping( vec3 color ) {
	const mat3 AgXInsetMatrix = mat3(
		vec3( 0.856627153315983, 0.137318972929847, 0.11189821299995 ),
		vec3( 0.0951212405381588, 0.761241990602591, 0.0767994186031903 ),
		vec3( 0.0482516061458583, 0.101439036467562, 0.811302368396859 )
	);
	const mat3 AgXOutsetMatrix = mat3(
		vec3( 1.1271005818144368, - 0.1413297634984383, - 0.14132976349843826 ),
		vec3( - 0.11060664309660323, 1.157823702216272, - 0.11060664309660294 ),
		vec3( - 0.016493938717834573, - 0.016493938717834257, 1.2519364065950405 )
	);
	const float AgxMinEv = - 12.47393;	const float AgxMaxEv = 4.026069;
	color *= toneMappingExposure;
	color = LINEAR_SRGB_TO_LINEAR_REC2020 * color;
	color = AgXInsetMatrix * color;
	color = max( color, 1e-10 );	color = log2( color );
	color = ( color - AgxMinEv ) / ( AgxMaxEv - AgxMinEv );
	color = clamp( color, 0.0, 1.0 );
	color = agxDefaultContrastApprox( color );
	color = AgXOutsetMatrix * color;
	color = pow( max( vec3( 0.0 ), color ), vec3( 2.2 ) );
	color = LINEAR_REC2020_TO_LINEAR_SRGB * color;
	color = clamp( color, 0.0, 1.0 );
	return color;
}
vec3 NeutralToneMapping( vec3 color ) {
	const float StartCompression = 0.8 - 0.04;
	const float Desaturation = 0.15;
	color *= toneMappingExposure;
	float x = min( color.r, min( color.g, color.b ) );
	float offset = x < 0.08 ? x - 6.25 * x * x : 0.04;
	color -= offset;
	float peak = max( color.r, max( color.g, color.b ) );
	if ( peak < StartCompression ) return color;
	float d = 1. - StartCompression;
	float newPeak = 1. - d * d / ( peak + d - StartCompression );
	color *= newPeak / peak;
	float g = 1. - 1. / ( Desaturation * ( peak - newPeak ) + 1. );
	return mix( color, vec3( newPeak ), g );
}
vec3 CustomToneMapping( vec3 color ) { return color; }`,F_=`#ifdef USE_TRANSMISSION
	material.transmission = transmission;
	material.transmissionAlpha = 1.0;
	material.thickness = thickness;
	material.attenuationDistance = attenuationDistance;
	material.attenuationColor = attenuationColor;
	#ifdef USE_TRANSMISSIONMAP
		material.transmission *= texture2D( transmissionMap, vTransmissionMapUv ).r;
	#endif
	#ifdef USE_THICKNESSMAP
		material.thickness *= texture2D( thicknessMap, vThicknessMapUv ).g;
	#endif
	vec3 pos = vWorldPosition;
	vec3 v = normalize( cameraPosition - pos );
	vec3 n = transformNormalByInverseViewMatrix( normal, viewMatrix );
	vec4 transmitted = getIBLVolumeRefraction(
		n, v, material.roughness, material.diffuseContribution, material.specularColorBlended, material.specularF90,
		pos, modelMatrix, viewMatrix, projectionMatrix, material.dispersion, material.ior, material.thickness,
		material.attenuationColor, material.attenuationDistance );
	material.transmissionAlpha = mix( material.transmissionAlpha, transmitted.a, material.transmission );
	totalDiffuse = mix( totalDiffuse, transmitted.rgb, material.transmission );
#endif`,O_=`#ifdef USE_TRANSMISSION
	uniform float transmission;
	uniform float thickness;
	uniform float attenuationDistance;
	uniform vec3 attenuationColor;
	#ifdef USE_TRANSMISSIONMAP
		uniform sampler2D transmissionMap;
	#endif
	#ifdef USE_THICKNESSMAP
		uniform sampler2D thicknessMap;
	#endif
	uniform vec2 transmissionSamplerSize;
	uniform sampler2D transmissionSamplerMap;
	uniform mat4 modelMatrix;
	uniform mat4 projectionMatrix;
	varying vec3 vWorldPosition;
	float w0( float a ) {
		return ( 1.0 / 6.0 ) * ( a * ( a * ( - a + 3.0 ) - 3.0 ) + 1.0 );
	}
	float w1( float a ) {
		return ( 1.0 / 6.0 ) * ( a *  a * ( 3.0 * a - 6.0 ) + 4.0 );
	}
	float w2( float a ){
		return ( 1.0 / 6.0 ) * ( a * ( a * ( - 3.0 * a + 3.0 ) + 3.0 ) + 1.0 );
	}
	float w3( float a ) {
		return ( 1.0 / 6.0 ) * ( a * a * a );
	}
	float g0( float a ) {
		return w0( a ) + w1( a );
	}
	float g1( float a ) {
		return w2( a ) + w3( a );
	}
	float h0( float a ) {
		return - 1.0 + w1( a ) / ( w0( a ) + w1( a ) );
	}
	float h1( float a ) {
		return 1.0 + w3( a ) / ( w2( a ) + w3( a ) );
	}
	vec4 bicubic( sampler2D tex, vec2 uv, vec4 texelSize, float lod ) {
		uv = uv * texelSize.zw + 0.5;
		vec2 iuv = floor( uv );
		vec2 fuv = fract( uv );
		float g0x = g0( fuv.x );
		float g1x = g1( fuv.x );
		float h0x = h0( fuv.x );
		float h1x = h1( fuv.x );
		float h0y = h0( fuv.y );
		float h1y = h1( fuv.y );
		vec2 p0 = ( vec2( iuv.x + h0x, iuv.y + h0y ) - 0.5 ) * texelSize.xy;
		vec2 p1 = ( vec2( iuv.x + h1x, iuv.y + h0y ) - 0.5 ) * texelSize.xy;
		vec2 p2 = ( vec2( iuv.x + h0x, iuv.y + h1y ) - 0.5 ) * texelSize.xy;
		vec2 p3 = ( vec2( iuv.x + h1x, iuv.y + h1y ) - 0.5 ) * texelSize.xy;
		return g0( fuv.y ) * ( g0x * textureLod( tex, p0, lod ) + g1x * textureLod( tex, p1, lod ) ) +
			g1( fuv.y ) * ( g0x * textureLod( tex, p2, lod ) + g1x * textureLod( tex, p3, lod ) );
	}
	vec4 textureBicubic( sampler2D sampler, vec2 uv, float lod ) {
		vec2 fLodSize = vec2( textureSize( sampler, int( lod ) ) );
		vec2 cLodSize = vec2( textureSize( sampler, int( lod + 1.0 ) ) );
		vec2 fLodSizeInv = 1.0 / fLodSize;
		vec2 cLodSizeInv = 1.0 / cLodSize;
		vec4 fSample = bicubic( sampler, uv, vec4( fLodSizeInv, fLodSize ), floor( lod ) );
		vec4 cSample = bicubic( sampler, uv, vec4( cLodSizeInv, cLodSize ), ceil( lod ) );
		return mix( fSample, cSample, fract( lod ) );
	}
	vec3 getVolumeTransmissionRay( const in vec3 n, const in vec3 v, const in float thickness, const in float ior, const in mat4 modelMatrix ) {
		vec3 refractionVector = refract( - v, normalize( n ), 1.0 / ior );
		vec3 modelScale;
		modelScale.x = length( vec3( modelMatrix[ 0 ].xyz ) );
		modelScale.y = length( vec3( modelMatrix[ 1 ].xyz ) );
		modelScale.z = length( vec3( modelMatrix[ 2 ].xyz ) );
		return normalize( refractionVector ) * thickness * modelScale;
	}
	float applyIorToRoughness( const in float roughness, const in float ior ) {
		return roughness * clamp( ior * 2.0 - 2.0, 0.0, 1.0 );
	}
	vec4 getTransmissionSample( const in vec2 fragCoord, const in float roughness, const in float ior ) {
		float lod = log2( transmissionSamplerSize.x ) * applyIorToRoughness( roughness, ior );
		return textureBicubic( transmissionSamplerMap, fragCoord.xy, lod );
	}
	vec3 volumeAttenuation( const in float transmissionDistance, const in vec3 attenuationColor, const in float attenuationDistance ) {
		if ( isinf( attenuationDistance ) ) {
			return vec3( 1.0 );
		} else {
			vec3 attenuationCoefficient = -log( attenuationColor ) / attenuationDistance;
			vec3 transmittance = exp( - attenuationCoefficient * transmissionDistance );			return transmittance;
		}
	}
	vec4 getIBLVolumeRefraction( const in vec3 n, const in vec3 v, const in float roughness, const in vec3 diffuseColor,
		const in vec3 specularColor, const in float specularF90, const in vec3 position, const in mat4 modelMatrix,
		const in mat4 viewMatrix, const in mat4 projMatrix, const in float dispersion, const in float ior, const in float thickness,
		const in vec3 attenuationColor, const in float attenuationDistance ) {
		vec4 transmittedLight;
		vec3 transmittance;
		#ifdef USE_DISPERSION
			float halfSpread = ( ior - 1.0 ) * 0.025 * dispersion;
			vec3 iors = vec3( ior - halfSpread, ior, ior + halfSpread );
			for ( int i = 0; i < 3; i ++ ) {
				vec3 transmissionRay = getVolumeTransmissionRay( n, v, thickness, iors[ i ], modelMatrix );
				vec3 refractedRayExit = position + transmissionRay;
				vec4 ndcPos = projMatrix * viewMatrix * vec4( refractedRayExit, 1.0 );
				vec2 refractionCoords = ndcPos.xy / ndcPos.w;
				refractionCoords += 1.0;
				refractionCoords /= 2.0;
				vec4 transmissionSample = getTransmissionSample( refractionCoords, roughness, iors[ i ] );
				transmittedLight[ i ] = transmissionSample[ i ];
				transmittedLight.a += transmissionSample.a;
				transmittance[ i ] = diffuseColor[ i ] * volumeAttenuation( length( transmissionRay ), attenuationColor, attenuationDistance )[ i ];
			}
			transmittedLight.a /= 3.0;
		#else
			vec3 transmissionRay = getVolumeTransmissionRay( n, v, thickness, ior, modelMatrix );
			vec3 refractedRayExit = position + transmissionRay;
			vec4 ndcPos = projMatrix * viewMatrix * vec4( refractedRayExit, 1.0 );
			vec2 refractionCoords = ndcPos.xy / ndcPos.w;
			refractionCoords += 1.0;
			refractionCoords /= 2.0;
			transmittedLight = getTransmissionSample( refractionCoords, roughness, ior );
			transmittance = diffuseColor * volumeAttenuation( length( transmissionRay ), attenuationColor, attenuationDistance );
		#endif
		vec3 attenuatedColor = transmittance * transmittedLight.rgb;
		vec3 F = EnvironmentBRDF( n, v, specularColor, specularF90, roughness );
		float transmittanceFactor = ( transmittance.r + transmittance.g + transmittance.b ) / 3.0;
		return vec4( ( 1.0 - F ) * attenuatedColor, 1.0 - ( 1.0 - transmittedLight.a ) * transmittanceFactor );
	}
#endif`,B_=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
	varying vec2 vUv;
#endif
#ifdef USE_MAP
	varying vec2 vMapUv;
#endif
#ifdef USE_ALPHAMAP
	varying vec2 vAlphaMapUv;
#endif
#ifdef USE_LIGHTMAP
	varying vec2 vLightMapUv;
#endif
#ifdef USE_AOMAP
	varying vec2 vAoMapUv;
#endif
#ifdef USE_BUMPMAP
	varying vec2 vBumpMapUv;
#endif
#ifdef USE_NORMALMAP
	varying vec2 vNormalMapUv;
#endif
#ifdef USE_EMISSIVEMAP
	varying vec2 vEmissiveMapUv;
#endif
#ifdef USE_METALNESSMAP
	varying vec2 vMetalnessMapUv;
#endif
#ifdef USE_ROUGHNESSMAP
	varying vec2 vRoughnessMapUv;
#endif
#ifdef USE_DIFFUSE_ROUGHNESSMAP
	varying vec2 vDiffuseRoughnessMapUv;
#endif
#ifdef USE_ANISOTROPYMAP
	varying vec2 vAnisotropyMapUv;
#endif
#ifdef USE_CLEARCOATMAP
	varying vec2 vClearcoatMapUv;
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	varying vec2 vClearcoatNormalMapUv;
#endif
#ifdef USE_CLEARCOAT_ROUGHNESSMAP
	varying vec2 vClearcoatRoughnessMapUv;
#endif
#ifdef USE_IRIDESCENCEMAP
	varying vec2 vIridescenceMapUv;
#endif
#ifdef USE_IRIDESCENCE_THICKNESSMAP
	varying vec2 vIridescenceThicknessMapUv;
#endif
#ifdef USE_SHEEN_COLORMAP
	varying vec2 vSheenColorMapUv;
#endif
#ifdef USE_SHEEN_ROUGHNESSMAP
	varying vec2 vSheenRoughnessMapUv;
#endif
#ifdef USE_SPECULARMAP
	varying vec2 vSpecularMapUv;
#endif
#ifdef USE_SPECULAR_COLORMAP
	varying vec2 vSpecularColorMapUv;
#endif
#ifdef USE_SPECULAR_INTENSITYMAP
	varying vec2 vSpecularIntensityMapUv;
#endif
#ifdef USE_TRANSMISSIONMAP
	uniform mat3 transmissionMapTransform;
	varying vec2 vTransmissionMapUv;
#endif
#ifdef USE_THICKNESSMAP
	uniform mat3 thicknessMapTransform;
	varying vec2 vThicknessMapUv;
#endif`,z_=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
	varying vec2 vUv;
#endif
#ifdef USE_MAP
	uniform mat3 mapTransform;
	varying vec2 vMapUv;
#endif
#ifdef USE_ALPHAMAP
	uniform mat3 alphaMapTransform;
	varying vec2 vAlphaMapUv;
#endif
#ifdef USE_LIGHTMAP
	uniform mat3 lightMapTransform;
	varying vec2 vLightMapUv;
#endif
#ifdef USE_AOMAP
	uniform mat3 aoMapTransform;
	varying vec2 vAoMapUv;
#endif
#ifdef USE_BUMPMAP
	uniform mat3 bumpMapTransform;
	varying vec2 vBumpMapUv;
#endif
#ifdef USE_NORMALMAP
	uniform mat3 normalMapTransform;
	varying vec2 vNormalMapUv;
#endif
#ifdef USE_DISPLACEMENTMAP
	uniform mat3 displacementMapTransform;
	varying vec2 vDisplacementMapUv;
#endif
#ifdef USE_EMISSIVEMAP
	uniform mat3 emissiveMapTransform;
	varying vec2 vEmissiveMapUv;
#endif
#ifdef USE_METALNESSMAP
	uniform mat3 metalnessMapTransform;
	varying vec2 vMetalnessMapUv;
#endif
#ifdef USE_ROUGHNESSMAP
	uniform mat3 roughnessMapTransform;
	varying vec2 vRoughnessMapUv;
#endif
#ifdef USE_DIFFUSE_ROUGHNESSMAP
	uniform mat3 diffuseRoughnessMapTransform;
	varying vec2 vDiffuseRoughnessMapUv;
#endif
#ifdef USE_ANISOTROPYMAP
	uniform mat3 anisotropyMapTransform;
	varying vec2 vAnisotropyMapUv;
#endif
#ifdef USE_CLEARCOATMAP
	uniform mat3 clearcoatMapTransform;
	varying vec2 vClearcoatMapUv;
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	uniform mat3 clearcoatNormalMapTransform;
	varying vec2 vClearcoatNormalMapUv;
#endif
#ifdef USE_CLEARCOAT_ROUGHNESSMAP
	uniform mat3 clearcoatRoughnessMapTransform;
	varying vec2 vClearcoatRoughnessMapUv;
#endif
#ifdef USE_SHEEN_COLORMAP
	uniform mat3 sheenColorMapTransform;
	varying vec2 vSheenColorMapUv;
#endif
#ifdef USE_SHEEN_ROUGHNESSMAP
	uniform mat3 sheenRoughnessMapTransform;
	varying vec2 vSheenRoughnessMapUv;
#endif
#ifdef USE_IRIDESCENCEMAP
	uniform mat3 iridescenceMapTransform;
	varying vec2 vIridescenceMapUv;
#endif
#ifdef USE_IRIDESCENCE_THICKNESSMAP
	uniform mat3 iridescenceThicknessMapTransform;
	varying vec2 vIridescenceThicknessMapUv;
#endif
#ifdef USE_SPECULARMAP
	uniform mat3 specularMapTransform;
	varying vec2 vSpecularMapUv;
#endif
#ifdef USE_SPECULAR_COLORMAP
	uniform mat3 specularColorMapTransform;
	varying vec2 vSpecularColorMapUv;
#endif
#ifdef USE_SPECULAR_INTENSITYMAP
	uniform mat3 specularIntensityMapTransform;
	varying vec2 vSpecularIntensityMapUv;
#endif
#ifdef USE_TRANSMISSIONMAP
	uniform mat3 transmissionMapTransform;
	varying vec2 vTransmissionMapUv;
#endif
#ifdef USE_THICKNESSMAP
	uniform mat3 thicknessMapTransform;
	varying vec2 vThicknessMapUv;
#endif`,k_=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
	vUv = vec3( uv, 1 ).xy;
#endif
#ifdef USE_MAP
	vMapUv = ( mapTransform * vec3( MAP_UV, 1 ) ).xy;
#endif
#ifdef USE_ALPHAMAP
	vAlphaMapUv = ( alphaMapTransform * vec3( ALPHAMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_LIGHTMAP
	vLightMapUv = ( lightMapTransform * vec3( LIGHTMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_AOMAP
	vAoMapUv = ( aoMapTransform * vec3( AOMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_BUMPMAP
	vBumpMapUv = ( bumpMapTransform * vec3( BUMPMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_NORMALMAP
	vNormalMapUv = ( normalMapTransform * vec3( NORMALMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_DISPLACEMENTMAP
	vDisplacementMapUv = ( displacementMapTransform * vec3( DISPLACEMENTMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_EMISSIVEMAP
	vEmissiveMapUv = ( emissiveMapTransform * vec3( EMISSIVEMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_METALNESSMAP
	vMetalnessMapUv = ( metalnessMapTransform * vec3( METALNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_ROUGHNESSMAP
	vRoughnessMapUv = ( roughnessMapTransform * vec3( ROUGHNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_DIFFUSE_ROUGHNESSMAP
	vDiffuseRoughnessMapUv = ( diffuseRoughnessMapTransform * vec3( DIFFUSE_ROUGHNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_ANISOTROPYMAP
	vAnisotropyMapUv = ( anisotropyMapTransform * vec3( ANISOTROPYMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_CLEARCOATMAP
	vClearcoatMapUv = ( clearcoatMapTransform * vec3( CLEARCOATMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	vClearcoatNormalMapUv = ( clearcoatNormalMapTransform * vec3( CLEARCOAT_NORMALMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_CLEARCOAT_ROUGHNESSMAP
	vClearcoatRoughnessMapUv = ( clearcoatRoughnessMapTransform * vec3( CLEARCOAT_ROUGHNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_IRIDESCENCEMAP
	vIridescenceMapUv = ( iridescenceMapTransform * vec3( IRIDESCENCEMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_IRIDESCENCE_THICKNESSMAP
	vIridescenceThicknessMapUv = ( iridescenceThicknessMapTransform * vec3( IRIDESCENCE_THICKNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_SHEEN_COLORMAP
	vSheenColorMapUv = ( sheenColorMapTransform * vec3( SHEEN_COLORMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_SHEEN_ROUGHNESSMAP
	vSheenRoughnessMapUv = ( sheenRoughnessMapTransform * vec3( SHEEN_ROUGHNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_SPECULARMAP
	vSpecularMapUv = ( specularMapTransform * vec3( SPECULARMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_SPECULAR_COLORMAP
	vSpecularColorMapUv = ( specularColorMapTransform * vec3( SPECULAR_COLORMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_SPECULAR_INTENSITYMAP
	vSpecularIntensityMapUv = ( specularIntensityMapTransform * vec3( SPECULAR_INTENSITYMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_TRANSMISSIONMAP
	vTransmissionMapUv = ( transmissionMapTransform * vec3( TRANSMISSIONMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_THICKNESSMAP
	vThicknessMapUv = ( thicknessMapTransform * vec3( THICKNESSMAP_UV, 1 ) ).xy;
#endif`,H_=`#if defined( USE_ENVMAP ) || defined( DISTANCE ) || defined ( USE_SHADOWMAP ) || defined ( USE_TRANSMISSION ) || NUM_SPOT_LIGHT_COORDS > 0
	vec4 worldPosition = vec4( transformed, 1.0 );
	#ifdef USE_BATCHING
		worldPosition = batchingMatrix * worldPosition;
	#endif
	#ifdef USE_INSTANCING
		worldPosition = instanceMatrix * worldPosition;
	#endif
	worldPosition = modelMatrix * worldPosition;
#endif`;const G_=`varying vec2 vUv;
uniform mat3 uvTransform;
void main() {
	vUv = ( uvTransform * vec3( uv, 1 ) ).xy;
	gl_Position = vec4( position.xy, 1.0, 1.0 );
}`,V_=`uniform sampler2D t2D;
uniform float backgroundIntensity;
varying vec2 vUv;
void main() {
	vec4 texColor = texture2D( t2D, vUv );
	#ifdef DECODE_VIDEO_TEXTURE
		texColor = vec4( mix( pow( texColor.rgb * 0.9478672986 + vec3( 0.0521327014 ), vec3( 2.4 ) ), texColor.rgb * 0.0773993808, vec3( lessThanEqual( texColor.rgb, vec3( 0.04045 ) ) ) ), texColor.w );
	#endif
	texColor.rgb *= backgroundIntensity;
	gl_FragColor = texColor;
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,W_=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
	gl_Position.z = gl_Position.w;
}`,X_=`uniform float backgroundBlurriness;
uniform float backgroundIntensity;
uniform mat3 backgroundRotation;
varying vec3 vWorldDirection;
#include <envmap_common_pars_fragment>
void main() {
	#ifdef ENVMAP_TYPE_PMREM
		vec4 texColor = textureLod( envMap, backgroundRotation * vWorldDirection, roughnessToMip( backgroundBlurriness ) );
	#else
		vec4 texColor = textureCube( envMap, backgroundRotation * vWorldDirection );
	#endif
	texColor.rgb *= backgroundIntensity;
	gl_FragColor = texColor;
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,q_=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
	gl_Position.z = gl_Position.w;
}`,$_=`uniform samplerCube tCube;
uniform float tFlip;
uniform float opacity;
varying vec3 vWorldDirection;
void main() {
	vec4 texColor = textureCube( tCube, vec3( tFlip * vWorldDirection.x, vWorldDirection.yz ) );
	gl_FragColor = texColor;
	gl_FragColor.a *= opacity;
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,Y_=`#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
varying vec2 vHighPrecisionZW;
void main() {
	#include <uv_vertex>
	#include <batching_vertex>
	#include <skinbase_vertex>
	#include <morphinstance_vertex>
	#ifdef USE_DISPLACEMENTMAP
		#include <beginnormal_vertex>
		#include <morphnormal_vertex>
		#include <skinnormal_vertex>
	#endif
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	vHighPrecisionZW = gl_Position.zw;
}`,K_=`#if DEPTH_PACKING == 3200
	uniform float opacity;
#endif
#include <common>
#include <packing>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
varying vec2 vHighPrecisionZW;
void main() {
	vec4 diffuseColor = vec4( 1.0 );
	#include <clipping_planes_fragment>
	#if DEPTH_PACKING == 3200
		diffuseColor.a = opacity;
	#endif
	#include <map_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <logdepthbuf_fragment>
	#ifdef USE_REVERSED_DEPTH_BUFFER
		float fragCoordZ = vHighPrecisionZW[ 0 ] / vHighPrecisionZW[ 1 ];
	#else
		float fragCoordZ = 0.5 * vHighPrecisionZW[ 0 ] / vHighPrecisionZW[ 1 ] + 0.5;
	#endif
	#if DEPTH_PACKING == 3200
		gl_FragColor = vec4( vec3( 1.0 - fragCoordZ ), opacity );
	#elif DEPTH_PACKING == 3201
		gl_FragColor = packDepthToRGBA( fragCoordZ );
	#elif DEPTH_PACKING == 3202
		gl_FragColor = vec4( packDepthToRGB( fragCoordZ ), 1.0 );
	#elif DEPTH_PACKING == 3203
		gl_FragColor = vec4( packDepthToRG( fragCoordZ ), 0.0, 1.0 );
	#endif
}`,Z_=`#define DISTANCE
varying vec3 vWorldPosition;
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <batching_vertex>
	#include <skinbase_vertex>
	#include <morphinstance_vertex>
	#ifdef USE_DISPLACEMENTMAP
		#include <beginnormal_vertex>
		#include <morphnormal_vertex>
		#include <skinnormal_vertex>
	#endif
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <worldpos_vertex>
	#include <clipping_planes_vertex>
	vWorldPosition = worldPosition.xyz;
}`,J_=`#define DISTANCE
uniform vec3 referencePosition;
uniform float nearDistance;
uniform float farDistance;
varying vec3 vWorldPosition;
#include <common>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( 1.0 );
	#include <clipping_planes_fragment>
	#include <map_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	float dist = length( vWorldPosition - referencePosition );
	dist = ( dist - nearDistance ) / ( farDistance - nearDistance );
	dist = saturate( dist );
	gl_FragColor = vec4( dist, 0.0, 0.0, 1.0 );
}`,Q_=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
}`,j_=`uniform sampler2D tEquirect;
varying vec3 vWorldDirection;
#include <common>
void main() {
	vec3 direction = normalize( vWorldDirection );
	vec2 sampleUV = equirectUv( direction );
	gl_FragColor = texture2D( tEquirect, sampleUV );
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,tg=`uniform float scale;
attribute float lineDistance;
varying float vLineDistance;
#include <common>
#include <uv_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <morphtarget_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	vLineDistance = scale * lineDistance;
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	#include <fog_vertex>
}`,eg=`uniform vec3 diffuse;
uniform float opacity;
uniform float dashSize;
uniform float totalSize;
varying float vLineDistance;
#include <common>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <fog_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	if ( mod( vLineDistance, totalSize ) > dashSize ) {
		discard;
	}
	vec3 outgoingLight = vec3( 0.0 );
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	outgoingLight = diffuseColor.rgb;
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
}`,ng=`#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <envmap_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#if defined ( USE_ENVMAP ) || defined ( USE_SKINNING )
		#include <beginnormal_vertex>
		#include <morphnormal_vertex>
		#include <skinbase_vertex>
		#include <skinnormal_vertex>
		#include <defaultnormal_vertex>
	#endif
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	#include <worldpos_vertex>
	#include <envmap_vertex>
	#include <fog_vertex>
}`,ig=`uniform vec3 diffuse;
uniform float opacity;
#ifndef FLAT_SHADED
	varying vec3 vNormal;
#endif
#include <common>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <aomap_pars_fragment>
#include <lightmap_pars_fragment>
#include <envmap_common_pars_fragment>
#include <envmap_pars_fragment>
#include <fog_pars_fragment>
#include <specularmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <specularmap_fragment>
	ReflectedLight reflectedLight = ReflectedLight( vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ) );
	#ifdef USE_LIGHTMAP
		vec4 lightMapTexel = texture2D( lightMap, vLightMapUv );
		reflectedLight.indirectDiffuse += lightMapTexel.rgb * lightMapIntensity * RECIPROCAL_PI;
	#else
		reflectedLight.indirectDiffuse += vec3( 1.0 );
	#endif
	#include <aomap_fragment>
	reflectedLight.indirectDiffuse *= diffuseColor.rgb;
	vec3 outgoingLight = reflectedLight.indirectDiffuse;
	#include <envmap_fragment>
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,sg=`#define LAMBERT
varying vec3 vViewPosition;
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <envmap_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <shadowmap_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	vViewPosition = - mvPosition.xyz;
	#include <worldpos_vertex>
	#include <envmap_vertex>
	#include <shadowmap_vertex>
	#include <fog_vertex>
}`,rg=`#define LAMBERT
uniform vec3 diffuse;
uniform vec3 emissive;
uniform float opacity;
#include <common>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <aomap_pars_fragment>
#include <lightmap_pars_fragment>
#include <emissivemap_pars_fragment>
#include <envmap_common_pars_fragment>
#include <envmap_pars_fragment>
#include <envmap_physical_pars_fragment>
#include <fog_pars_fragment>
#include <bsdfs>
#include <lights_pars_begin>
#include <normal_pars_fragment>
#include <lights_lambert_pars_fragment>
#include <shadowmap_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <specularmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	ReflectedLight reflectedLight = ReflectedLight( vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ) );
	vec3 totalEmissiveRadiance = emissive;
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <specularmap_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	#include <emissivemap_fragment>
	#include <lights_lambert_fragment>
	#include <lights_fragment_begin>
	#include <lights_fragment_maps>
	#include <lights_fragment_end>
	#include <aomap_fragment>
	vec3 outgoingLight = reflectedLight.directDiffuse + reflectedLight.indirectDiffuse + totalEmissiveRadiance;
	#include <envmap_fragment>
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,ag=`#define MATCAP
varying vec3 vViewPosition;
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <color_pars_vertex>
#include <displacementmap_pars_vertex>
#include <fog_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	#include <fog_vertex>
	vViewPosition = - mvPosition.xyz;
}`,og=`#define MATCAP
uniform vec3 diffuse;
uniform float opacity;
uniform sampler2D matcap;
varying vec3 vViewPosition;
#include <common>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <fog_pars_fragment>
#include <normal_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	vec3 viewDir = normalize( vViewPosition );
	vec3 x = normalize( vec3( viewDir.z, 0.0, - viewDir.x ) );
	vec3 y = cross( viewDir, x );
	vec2 uv = vec2( dot( x, normal ), dot( y, normal ) ) * 0.495 + 0.5;
	#ifdef USE_MATCAP
		vec4 matcapColor = texture2D( matcap, uv );
	#else
		vec4 matcapColor = vec4( vec3( mix( 0.2, 0.8, uv.y ) ), 1.0 );
	#endif
	vec3 outgoingLight = diffuseColor.rgb * matcapColor.rgb;
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,lg=`#define NORMAL
#if defined( FLAT_SHADED ) || defined( USE_BUMPMAP ) || defined( USE_NORMALMAP_TANGENTSPACE )
	varying vec3 vViewPosition;
#endif
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphinstance_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
#if defined( FLAT_SHADED ) || defined( USE_BUMPMAP ) || defined( USE_NORMALMAP_TANGENTSPACE )
	vViewPosition = - mvPosition.xyz;
#endif
}`,cg=`#define NORMAL
uniform float opacity;
#if defined( FLAT_SHADED ) || defined( USE_BUMPMAP ) || defined( USE_NORMALMAP_TANGENTSPACE )
	varying vec3 vViewPosition;
#endif
#include <uv_pars_fragment>
#include <normal_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( 0.0, 0.0, 0.0, opacity );
	#include <clipping_planes_fragment>
	#include <logdepthbuf_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	gl_FragColor = vec4( normalize( normal ) * 0.5 + 0.5, diffuseColor.a );
	#ifdef OPAQUE
		gl_FragColor.a = 1.0;
	#endif
}`,ug=`#define PHONG
varying vec3 vViewPosition;
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <envmap_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <shadowmap_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphinstance_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	vViewPosition = - mvPosition.xyz;
	#include <worldpos_vertex>
	#include <envmap_vertex>
	#include <shadowmap_vertex>
	#include <fog_vertex>
}`,hg=`#define PHONG
uniform vec3 diffuse;
uniform vec3 emissive;
uniform vec3 specular;
uniform float shininess;
uniform float opacity;
#include <common>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <aomap_pars_fragment>
#include <lightmap_pars_fragment>
#include <emissivemap_pars_fragment>
#include <envmap_common_pars_fragment>
#include <envmap_pars_fragment>
#include <envmap_physical_pars_fragment>
#include <fog_pars_fragment>
#include <bsdfs>
#include <lights_pars_begin>
#include <normal_pars_fragment>
#include <lights_phong_pars_fragment>
#include <shadowmap_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <specularmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	ReflectedLight reflectedLight = ReflectedLight( vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ) );
	vec3 totalEmissiveRadiance = emissive;
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <specularmap_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	#include <emissivemap_fragment>
	#include <lights_phong_fragment>
	#include <lights_fragment_begin>
	#include <lights_fragment_maps>
	#include <lights_fragment_end>
	#include <aomap_fragment>
	vec3 outgoingLight = reflectedLight.directDiffuse + reflectedLight.indirectDiffuse + reflectedLight.directSpecular + reflectedLight.indirectSpecular + totalEmissiveRadiance;
	#include <envmap_fragment>
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,dg=`#define STANDARD
varying vec3 vViewPosition;
#ifdef USE_TRANSMISSION
	varying vec3 vWorldPosition;
#endif
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <shadowmap_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	vViewPosition = - mvPosition.xyz;
	#include <worldpos_vertex>
	#include <shadowmap_vertex>
	#include <fog_vertex>
#ifdef USE_TRANSMISSION
	vWorldPosition = worldPosition.xyz;
#endif
}`,fg=`#define STANDARD
#ifdef PHYSICAL
	#define IOR
	#define USE_SPECULAR
#endif
uniform vec3 diffuse;
uniform vec3 emissive;
uniform float roughness;
uniform float metalness;
uniform float opacity;
#ifdef IOR
	uniform float ior;
#endif
#ifdef USE_SPECULAR
	uniform float specularIntensity;
	uniform vec3 specularColor;
	#ifdef USE_SPECULAR_COLORMAP
		uniform sampler2D specularColorMap;
	#endif
	#ifdef USE_SPECULAR_INTENSITYMAP
		uniform sampler2D specularIntensityMap;
	#endif
#endif
#ifdef USE_CLEARCOAT
	uniform float clearcoat;
	uniform float clearcoatRoughness;
#endif
#ifdef USE_DIFFUSE_ROUGHNESS
	uniform float diffuseRoughness;
	#ifdef USE_DIFFUSE_ROUGHNESSMAP
		uniform sampler2D diffuseRoughnessMap;
	#endif
#endif
#ifdef USE_DISPERSION
	uniform float dispersion;
#endif
#ifdef USE_RETROREFLECTION
	uniform float retroreflectivity;
#endif
#ifdef USE_IRIDESCENCE
	uniform float iridescence;
	uniform float iridescenceIOR;
	uniform float iridescenceThicknessMinimum;
	uniform float iridescenceThicknessMaximum;
#endif
#ifdef USE_SHEEN
	uniform vec3 sheenColor;
	uniform float sheenRoughness;
	#ifdef USE_SHEEN_COLORMAP
		uniform sampler2D sheenColorMap;
	#endif
	#ifdef USE_SHEEN_ROUGHNESSMAP
		uniform sampler2D sheenRoughnessMap;
	#endif
#endif
#ifdef USE_ANISOTROPY
	uniform vec2 anisotropyVector;
	#ifdef USE_ANISOTROPYMAP
		uniform sampler2D anisotropyMap;
	#endif
#endif
varying vec3 vViewPosition;
#include <common>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <aomap_pars_fragment>
#include <lightmap_pars_fragment>
#include <emissivemap_pars_fragment>
#include <iridescence_fragment>
#include <envmap_common_pars_fragment>
#include <envmap_physical_pars_fragment>
#include <fog_pars_fragment>
#include <lights_pars_begin>
#include <normal_pars_fragment>
#include <lights_physical_pars_fragment>
#include <transmission_pars_fragment>
#include <shadowmap_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <clearcoat_pars_fragment>
#include <iridescence_pars_fragment>
#include <roughnessmap_pars_fragment>
#include <metalnessmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	ReflectedLight reflectedLight = ReflectedLight( vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ) );
	vec3 totalEmissiveRadiance = emissive;
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <roughnessmap_fragment>
	#include <metalnessmap_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	#include <clearcoat_normal_fragment_begin>
	#include <clearcoat_normal_fragment_maps>
	#include <emissivemap_fragment>
	#include <lights_physical_fragment>
	#include <lights_fragment_begin>
	#include <lights_fragment_maps>
	#include <lights_fragment_end>
	#include <aomap_fragment>
	vec3 totalDiffuse = reflectedLight.directDiffuse + reflectedLight.indirectDiffuse;
	vec3 totalSpecular = reflectedLight.directSpecular + reflectedLight.indirectSpecular;
	#include <transmission_fragment>
	vec3 outgoingLight = totalDiffuse + totalSpecular + totalEmissiveRadiance;
	#ifdef USE_SHEEN
 
		outgoingLight = outgoingLight + sheenSpecularDirect + sheenSpecularIndirect;
 
 	#endif
	#ifdef USE_CLEARCOAT
		float dotNVcc = saturate( dot( geometryClearcoatNormal, geometryViewDir ) );
		vec3 Fcc = F_Schlick( material.clearcoatF0, material.clearcoatF90, dotNVcc );
		outgoingLight = outgoingLight * ( 1.0 - material.clearcoat * Fcc ) + ( clearcoatSpecularDirect + clearcoatSpecularIndirect ) * material.clearcoat;
	#endif
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,pg=`#define TOON
varying vec3 vViewPosition;
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <shadowmap_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	vViewPosition = - mvPosition.xyz;
	#include <worldpos_vertex>
	#include <shadowmap_vertex>
	#include <fog_vertex>
}`,mg=`#define TOON
uniform vec3 diffuse;
uniform vec3 emissive;
uniform float opacity;
#include <common>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <aomap_pars_fragment>
#include <lightmap_pars_fragment>
#include <emissivemap_pars_fragment>
#include <gradientmap_pars_fragment>
#include <fog_pars_fragment>
#include <bsdfs>
#include <lights_pars_begin>
#include <normal_pars_fragment>
#include <lights_toon_pars_fragment>
#include <shadowmap_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	ReflectedLight reflectedLight = ReflectedLight( vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ) );
	vec3 totalEmissiveRadiance = emissive;
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	#include <emissivemap_fragment>
	#include <lights_toon_fragment>
	#include <lights_fragment_begin>
	#include <lights_fragment_maps>
	#include <lights_fragment_end>
	#include <aomap_fragment>
	vec3 outgoingLight = reflectedLight.directDiffuse + reflectedLight.indirectDiffuse + totalEmissiveRadiance;
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,_g=`uniform float size;
uniform float scale;
#include <common>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <morphtarget_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
#ifdef USE_POINTS_UV
	varying vec2 vUv;
	uniform mat3 uvTransform;
#endif
void main() {
	#ifdef USE_POINTS_UV
		vUv = ( uvTransform * vec3( uv, 1 ) ).xy;
	#endif
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <project_vertex>
	gl_PointSize = size;
	#ifdef USE_SIZEATTENUATION
		bool isPerspective = isPerspectiveMatrix( projectionMatrix );
		if ( isPerspective ) gl_PointSize *= ( scale / - mvPosition.z );
	#endif
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	#include <worldpos_vertex>
	#include <fog_vertex>
}`,gg=`uniform vec3 diffuse;
uniform float opacity;
#include <common>
#include <color_pars_fragment>
#include <map_particle_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <fog_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	vec3 outgoingLight = vec3( 0.0 );
	#include <logdepthbuf_fragment>
	#include <map_particle_fragment>
	#include <color_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	outgoingLight = diffuseColor.rgb;
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
}`,xg=`#include <common>
#include <batching_pars_vertex>
#include <fog_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <shadowmap_pars_vertex>
void main() {
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphinstance_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <worldpos_vertex>
	#include <shadowmap_vertex>
	#include <fog_vertex>
}`,vg=`uniform vec3 color;
uniform float opacity;
#include <common>
#include <fog_pars_fragment>
#include <bsdfs>
#include <lights_pars_begin>
#include <logdepthbuf_pars_fragment>
#include <shadowmap_pars_fragment>
#include <shadowmask_pars_fragment>
void main() {
	#include <logdepthbuf_fragment>
	gl_FragColor = vec4( color, opacity * ( 1.0 - getShadowMask() ) );
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
}`,Sg=`uniform float rotation;
uniform vec2 center;
#include <common>
#include <uv_pars_vertex>
#include <fog_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	vec4 mvPosition = modelViewMatrix[ 3 ];
	vec2 scale = vec2( length( modelMatrix[ 0 ].xyz ), length( modelMatrix[ 1 ].xyz ) );
	#ifndef USE_SIZEATTENUATION
		bool isPerspective = isPerspectiveMatrix( projectionMatrix );
		if ( isPerspective ) scale *= - mvPosition.z;
	#endif
	vec2 alignedPosition = ( position.xy - ( center - vec2( 0.5 ) ) ) * scale;
	vec2 rotatedPosition;
	rotatedPosition.x = cos( rotation ) * alignedPosition.x - sin( rotation ) * alignedPosition.y;
	rotatedPosition.y = sin( rotation ) * alignedPosition.x + cos( rotation ) * alignedPosition.y;
	mvPosition.xy += rotatedPosition;
	gl_Position = projectionMatrix * mvPosition;
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	#include <fog_vertex>
}`,Mg=`uniform vec3 diffuse;
uniform float opacity;
#include <common>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <fog_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	vec3 outgoingLight = vec3( 0.0 );
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	outgoingLight = diffuseColor.rgb;
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
}`,kt={alphahash_fragment:Vp,alphahash_pars_fragment:Wp,alphamap_fragment:Xp,alphamap_pars_fragment:qp,alphatest_fragment:$p,alphatest_pars_fragment:Yp,aomap_fragment:Kp,aomap_pars_fragment:Zp,batching_pars_vertex:Jp,batching_vertex:Qp,begin_vertex:jp,beginnormal_vertex:tm,bsdfs:em,iridescence_fragment:nm,bumpmap_pars_fragment:im,clipping_planes_fragment:sm,clipping_planes_pars_fragment:rm,clipping_planes_pars_vertex:am,clipping_planes_vertex:om,color_fragment:lm,color_pars_fragment:cm,color_pars_vertex:um,color_vertex:hm,common:dm,defaultnormal_vertex:fm,displacementmap_pars_vertex:pm,displacementmap_vertex:mm,emissivemap_fragment:_m,emissivemap_pars_fragment:gm,colorspace_fragment:xm,colorspace_pars_fragment:vm,envmap_fragment:Sm,envmap_common_pars_fragment:Mm,envmap_pars_fragment:ym,envmap_pars_vertex:Em,envmap_physical_pars_fragment:Im,envmap_vertex:bm,fog_vertex:Tm,fog_pars_vertex:wm,fog_fragment:Am,fog_pars_fragment:Rm,gradientmap_pars_fragment:Cm,lightmap_pars_fragment:Pm,lights_lambert_fragment:Lm,lights_lambert_pars_fragment:Dm,lights_pars_begin:Nm,lights_toon_fragment:Um,lights_toon_pars_fragment:Fm,lights_phong_fragment:Om,lights_phong_pars_fragment:Bm,lights_physical_fragment:zm,lights_physical_pars_fragment:km,lights_fragment_begin:Hm,lights_fragment_maps:Gm,lights_fragment_end:Vm,lightprobes_pars_fragment:Wm,logdepthbuf_fragment:Xm,logdepthbuf_pars_fragment:qm,logdepthbuf_pars_vertex:$m,logdepthbuf_vertex:Ym,map_fragment:Km,map_pars_fragment:Zm,map_particle_fragment:Jm,map_particle_pars_fragment:Qm,metalnessmap_fragment:jm,metalnessmap_pars_fragment:t_,morphinstance_vertex:e_,morphcolor_vertex:n_,morphnormal_vertex:i_,morphtarget_pars_vertex:s_,morphtarget_vertex:r_,normal_fragment_begin:a_,normal_fragment_maps:o_,normal_pars_fragment:l_,normal_pars_vertex:c_,normal_vertex:u_,normalmap_pars_fragment:h_,clearcoat_normal_fragment_begin:d_,clearcoat_normal_fragment_maps:f_,clearcoat_pars_fragment:p_,iridescence_pars_fragment:m_,opaque_fragment:__,packing:g_,premultiplied_alpha_fragment:x_,project_vertex:v_,dithering_fragment:S_,dithering_pars_fragment:M_,roughnessmap_fragment:y_,roughnessmap_pars_fragment:E_,shadowmap_pars_fragment:b_,shadowmap_pars_vertex:T_,shadowmap_vertex:w_,shadowmask_pars_fragment:A_,skinbase_vertex:R_,skinning_pars_vertex:C_,skinning_vertex:P_,skinnormal_vertex:L_,specularmap_fragment:D_,specularmap_pars_fragment:N_,tonemapping_fragment:I_,tonemapping_pars_fragment:U_,transmission_fragment:F_,transmission_pars_fragment:O_,uv_pars_fragment:B_,uv_pars_vertex:z_,uv_vertex:k_,worldpos_vertex:H_,background_vert:G_,background_frag:V_,backgroundCube_vert:W_,backgroundCube_frag:X_,cube_vert:q_,cube_frag:$_,depth_vert:Y_,depth_frag:K_,distance_vert:Z_,distance_frag:J_,equirect_vert:Q_,equirect_frag:j_,linedashed_vert:tg,linedashed_frag:eg,meshbasic_vert:ng,meshbasic_frag:ig,meshlambert_vert:sg,meshlambert_frag:rg,meshmatcap_vert:ag,meshmatcap_frag:og,meshnormal_vert:lg,meshnormal_frag:cg,meshphong_vert:ug,meshphong_frag:hg,meshphysical_vert:dg,meshphysical_frag:fg,meshtoon_vert:pg,meshtoon_frag:mg,points_vert:_g,points_frag:gg,shadow_vert:xg,shadow_frag:vg,sprite_vert:Sg,sprite_frag:Mg},gt={common:{diffuse:{value:new Xt(16777215)},opacity:{value:1},map:{value:null},mapTransform:{value:new Ft},alphaMap:{value:null},alphaMapTransform:{value:new Ft},alphaTest:{value:0}},specularmap:{specularMap:{value:null},specularMapTransform:{value:new Ft}},envmap:{envMap:{value:null},envMapRotation:{value:new Ft},reflectivity:{value:1},ior:{value:1.5},refractionRatio:{value:.98},dfgLUT:{value:null}},aomap:{aoMap:{value:null},aoMapIntensity:{value:1},aoMapTransform:{value:new Ft}},lightmap:{lightMap:{value:null},lightMapIntensity:{value:1},lightMapTransform:{value:new Ft}},bumpmap:{bumpMap:{value:null},bumpMapTransform:{value:new Ft},bumpScale:{value:1}},normalmap:{normalMap:{value:null},normalMapTransform:{value:new Ft},normalScale:{value:new Rt(1,1)}},displacementmap:{displacementMap:{value:null},displacementMapTransform:{value:new Ft},displacementScale:{value:1},displacementBias:{value:0}},emissivemap:{emissiveMap:{value:null},emissiveMapTransform:{value:new Ft}},metalnessmap:{metalnessMap:{value:null},metalnessMapTransform:{value:new Ft}},roughnessmap:{roughnessMap:{value:null},roughnessMapTransform:{value:new Ft}},gradientmap:{gradientMap:{value:null}},fog:{fogDensity:{value:25e-5},fogNear:{value:1},fogFar:{value:2e3},fogColor:{value:new Xt(16777215)}},lights:{ambientLightColor:{value:[]},lightProbe:{value:[]},sunLights:{value:[],properties:{direction:{},color:{}}},sunLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},sunShadowMatrix:{value:[]},sunShadowCascade:{value:[]},directionalLights:{value:[],properties:{direction:{},color:{}}},directionalLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},directionalShadowMatrix:{value:[]},spotLights:{value:[],properties:{color:{},position:{},direction:{},distance:{},coneCos:{},penumbraCos:{},decay:{}}},spotLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},spotLightMap:{value:[]},spotLightMatrix:{value:[]},pointLights:{value:[],properties:{color:{},position:{},decay:{},distance:{}}},pointLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{},shadowCameraNear:{},shadowCameraFar:{}}},pointShadowMatrix:{value:[]},hemisphereLights:{value:[],properties:{direction:{},skyColor:{},groundColor:{}}},rectAreaLights:{value:[],properties:{color:{},position:{},width:{},height:{}}},ltc_1:{value:null},ltc_2:{value:null},probesSH:{value:[]},probesMin:{value:[]},probesMax:{value:[]},probesResolution:{value:[]}},points:{diffuse:{value:new Xt(16777215)},opacity:{value:1},size:{value:1},scale:{value:1},map:{value:null},alphaMap:{value:null},alphaMapTransform:{value:new Ft},alphaTest:{value:0},uvTransform:{value:new Ft}},sprite:{diffuse:{value:new Xt(16777215)},opacity:{value:1},center:{value:new Rt(.5,.5)},rotation:{value:0},map:{value:null},mapTransform:{value:new Ft},alphaMap:{value:null},alphaMapTransform:{value:new Ft},alphaTest:{value:0}}},On={basic:{uniforms:Je([gt.common,gt.specularmap,gt.envmap,gt.aomap,gt.lightmap,gt.fog]),vertexShader:kt.meshbasic_vert,fragmentShader:kt.meshbasic_frag},lambert:{uniforms:Je([gt.common,gt.specularmap,gt.envmap,gt.aomap,gt.lightmap,gt.emissivemap,gt.bumpmap,gt.normalmap,gt.displacementmap,gt.fog,gt.lights,{emissive:{value:new Xt(0)},envMapIntensity:{value:1}}]),vertexShader:kt.meshlambert_vert,fragmentShader:kt.meshlambert_frag},phong:{uniforms:Je([gt.common,gt.specularmap,gt.envmap,gt.aomap,gt.lightmap,gt.emissivemap,gt.bumpmap,gt.normalmap,gt.displacementmap,gt.fog,gt.lights,{emissive:{value:new Xt(0)},specular:{value:new Xt(1118481)},shininess:{value:30},envMapIntensity:{value:1}}]),vertexShader:kt.meshphong_vert,fragmentShader:kt.meshphong_frag},standard:{uniforms:Je([gt.common,gt.envmap,gt.aomap,gt.lightmap,gt.emissivemap,gt.bumpmap,gt.normalmap,gt.displacementmap,gt.roughnessmap,gt.metalnessmap,gt.fog,gt.lights,{emissive:{value:new Xt(0)},roughness:{value:1},metalness:{value:0},envMapIntensity:{value:1}}]),vertexShader:kt.meshphysical_vert,fragmentShader:kt.meshphysical_frag},toon:{uniforms:Je([gt.common,gt.aomap,gt.lightmap,gt.emissivemap,gt.bumpmap,gt.normalmap,gt.displacementmap,gt.gradientmap,gt.fog,gt.lights,{emissive:{value:new Xt(0)}}]),vertexShader:kt.meshtoon_vert,fragmentShader:kt.meshtoon_frag},matcap:{uniforms:Je([gt.common,gt.bumpmap,gt.normalmap,gt.displacementmap,gt.fog,{matcap:{value:null}}]),vertexShader:kt.meshmatcap_vert,fragmentShader:kt.meshmatcap_frag},points:{uniforms:Je([gt.points,gt.fog]),vertexShader:kt.points_vert,fragmentShader:kt.points_frag},dashed:{uniforms:Je([gt.common,gt.fog,{scale:{value:1},dashSize:{value:1},totalSize:{value:2}}]),vertexShader:kt.linedashed_vert,fragmentShader:kt.linedashed_frag},depth:{uniforms:Je([gt.common,gt.displacementmap]),vertexShader:kt.depth_vert,fragmentShader:kt.depth_frag},normal:{uniforms:Je([gt.common,gt.bumpmap,gt.normalmap,gt.displacementmap,{opacity:{value:1}}]),vertexShader:kt.meshnormal_vert,fragmentShader:kt.meshnormal_frag},sprite:{uniforms:Je([gt.sprite,gt.fog]),vertexShader:kt.sprite_vert,fragmentShader:kt.sprite_frag},background:{uniforms:{uvTransform:{value:new Ft},t2D:{value:null},backgroundIntensity:{value:1}},vertexShader:kt.background_vert,fragmentShader:kt.background_frag},backgroundCube:{uniforms:{envMap:{value:null},backgroundBlurriness:{value:0},backgroundIntensity:{value:1},backgroundRotation:{value:new Ft}},vertexShader:kt.backgroundCube_vert,fragmentShader:kt.backgroundCube_frag},cube:{uniforms:{tCube:{value:null},tFlip:{value:-1},opacity:{value:1}},vertexShader:kt.cube_vert,fragmentShader:kt.cube_frag},equirect:{uniforms:{tEquirect:{value:null}},vertexShader:kt.equirect_vert,fragmentShader:kt.equirect_frag},distance:{uniforms:Je([gt.common,gt.displacementmap,{referencePosition:{value:new I},nearDistance:{value:1},farDistance:{value:1e3}}]),vertexShader:kt.distance_vert,fragmentShader:kt.distance_frag},shadow:{uniforms:Je([gt.lights,gt.fog,{color:{value:new Xt(0)},opacity:{value:1}}]),vertexShader:kt.shadow_vert,fragmentShader:kt.shadow_frag}};On.physical={uniforms:Je([On.standard.uniforms,{clearcoat:{value:0},clearcoatMap:{value:null},clearcoatMapTransform:{value:new Ft},clearcoatNormalMap:{value:null},clearcoatNormalMapTransform:{value:new Ft},clearcoatNormalScale:{value:new Rt(1,1)},clearcoatRoughness:{value:0},clearcoatRoughnessMap:{value:null},clearcoatRoughnessMapTransform:{value:new Ft},diffuseRoughness:{value:0},diffuseRoughnessMap:{value:null},diffuseRoughnessMapTransform:{value:new Ft},dispersion:{value:0},retroreflectivity:{value:0},iridescence:{value:0},iridescenceMap:{value:null},iridescenceMapTransform:{value:new Ft},iridescenceIOR:{value:1.3},iridescenceThicknessMinimum:{value:100},iridescenceThicknessMaximum:{value:400},iridescenceThicknessMap:{value:null},iridescenceThicknessMapTransform:{value:new Ft},sheen:{value:0},sheenColor:{value:new Xt(0)},sheenColorMap:{value:null},sheenColorMapTransform:{value:new Ft},sheenRoughness:{value:1},sheenRoughnessMap:{value:null},sheenRoughnessMapTransform:{value:new Ft},transmission:{value:0},transmissionMap:{value:null},transmissionMapTransform:{value:new Ft},transmissionSamplerSize:{value:new Rt},transmissionSamplerMap:{value:null},thickness:{value:0},thicknessMap:{value:null},thicknessMapTransform:{value:new Ft},attenuationDistance:{value:0},attenuationColor:{value:new Xt(0)},specularColor:{value:new Xt(1,1,1)},specularColorMap:{value:null},specularColorMapTransform:{value:new Ft},specularIntensity:{value:1},specularIntensityMap:{value:null},specularIntensityMapTransform:{value:new Ft},anisotropyVector:{value:new Rt},anisotropyMap:{value:null},anisotropyMapTransform:{value:new Ft}}]),vertexShader:kt.meshphysical_vert,fragmentShader:kt.meshphysical_frag};const Ar={r:0,b:0,g:0},yg=new $t,pd=new Ft;pd.set(-1,0,0,0,1,0,0,0,1);function Eg(n,t,e,i,s,r){const a=new Xt(0);let o=s===!0?0:1,l,c,h=null,d=0,u=null;function f(x){let y=x.isScene===!0?x.background:null;if(y&&y.isTexture){const v=x.backgroundBlurriness>0;y=t.get(y,v)}return y}function g(x){let y=!1;const v=f(x);v===null?m(a,o):v&&v.isColor&&(m(v,1),y=!0);const M=n.xr.getEnvironmentBlendMode();M==="additive"?e.buffers.color.setClear(0,0,0,1,r):M==="alpha-blend"&&e.buffers.color.setClear(0,0,0,0,r),(n.autoClear||y)&&(e.buffers.depth.setTest(!0),e.buffers.depth.setMask(!0),e.buffers.color.setMask(!0),n.clear(n.autoClearColor,n.autoClearDepth,n.autoClearStencil))}function S(x,y){const v=f(y);v&&v.isCubeTexture?(c===void 0&&(c=new Sn(new Qs(1,1,1),new ii({name:"BackgroundCubeMaterial",uniforms:vs(On.backgroundCube.uniforms),vertexShader:On.backgroundCube.vertexShader,fragmentShader:On.backgroundCube.fragmentShader,side:Qe,depthTest:!1,depthWrite:!1,fog:!1,allowOverride:!1})),c.geometry.deleteAttribute("normal"),c.geometry.deleteAttribute("uv"),c.onBeforeRender=function(M,A,_){this.matrixWorld.copyPosition(_.matrixWorld)},Object.defineProperty(c.material,"envMap",{get:function(){return this.uniforms.envMap.value}}),i.update(c)),c.material.uniforms.envMap.value=v,c.material.uniforms.backgroundBlurriness.value=y.backgroundBlurriness,c.material.uniforms.backgroundIntensity.value=y.backgroundIntensity,c.material.uniforms.backgroundRotation.value.setFromMatrix4(yg.makeRotationFromEuler(y.backgroundRotation)).transpose(),v.isRenderTargetTexture===!1&&c.material.uniforms.backgroundRotation.value.premultiply(pd),c.material.toneMapped=qt.getTransfer(v.colorSpace)!==te,(h!==v||d!==v.version||u!==n.toneMapping)&&(c.material.needsUpdate=!0,h=v,d=v.version,u=n.toneMapping),c.layers.enableAll(),x.unshift(c,c.geometry,c.material,0,0,null)):v&&v.isTexture&&(l===void 0&&(l=new Sn(new Ta(2,2),new ii({name:"BackgroundMaterial",uniforms:vs(On.background.uniforms),vertexShader:On.background.vertexShader,fragmentShader:On.background.fragmentShader,side:ni,depthTest:!1,depthWrite:!1,fog:!1,allowOverride:!1})),l.geometry.deleteAttribute("normal"),Object.defineProperty(l.material,"map",{get:function(){return this.uniforms.t2D.value}}),i.update(l)),l.material.uniforms.t2D.value=v,l.material.uniforms.backgroundIntensity.value=y.backgroundIntensity,l.material.toneMapped=qt.getTransfer(v.colorSpace)!==te,v.matrixAutoUpdate===!0&&v.updateMatrix(),l.material.uniforms.uvTransform.value.copy(v.matrix),(h!==v||d!==v.version||u!==n.toneMapping)&&(l.material.needsUpdate=!0,h=v,d=v.version,u=n.toneMapping),l.layers.enableAll(),x.unshift(l,l.geometry,l.material,0,0,null))}function m(x,y){x.getRGB(Ar,cd(n)),e.buffers.color.setClear(Ar.r,Ar.g,Ar.b,y,r)}function p(){c!==void 0&&(c.geometry.dispose(),c.material.dispose(),c=void 0),l!==void 0&&(l.geometry.dispose(),l.material.dispose(),l=void 0)}return{getClearColor:function(){return a},setClearColor:function(x,y=1){a.set(x),o=y,m(a,o)},getClearAlpha:function(){return o},setClearAlpha:function(x){o=x,m(a,o)},render:g,addToRenderList:S,dispose:p}}function bg(n,t){const e=n.getParameter(n.MAX_VERTEX_ATTRIBS),i={},s=u(null);let r=s,a=!1;function o(P,N,F,C,B){let W=!1;const k=d(P,C,F,N);r!==k&&(r=k,c(r.object)),W=f(P,C,F,B),W&&g(P,C,F,B),B!==null&&t.update(B,n.ELEMENT_ARRAY_BUFFER),(W||a)&&(a=!1,v(P,N,F,C),B!==null&&n.bindBuffer(n.ELEMENT_ARRAY_BUFFER,t.get(B).buffer))}function l(){return n.createVertexArray()}function c(P){return n.bindVertexArray(P)}function h(P){return n.deleteVertexArray(P)}function d(P,N,F,C){const B=C.wireframe===!0;let W=i[N.id];W===void 0&&(W={},i[N.id]=W);const k=P.isInstancedMesh===!0?P.id:0;let et=W[k];et===void 0&&(et={},W[k]=et);let q=et[F.id];q===void 0&&(q={},et[F.id]=q);let j=q[B];return j===void 0&&(j=u(l()),q[B]=j),j}function u(P){const N=[],F=[],C=[];for(let B=0;B<e;B++)N[B]=0,F[B]=0,C[B]=0;return{geometry:null,program:null,wireframe:!1,newAttributes:N,enabledAttributes:F,attributeDivisors:C,object:P,attributes:{},index:null}}function f(P,N,F,C){const B=r.attributes,W=N.attributes;let k=0;const et=F.getAttributes();for(const q in et)if(et[q].location>=0){const tt=B[q];let St=W[q];if(St===void 0&&(q==="instanceMatrix"&&P.instanceMatrix&&(St=P.instanceMatrix),q==="instanceColor"&&P.instanceColor&&(St=P.instanceColor)),tt===void 0||tt.attribute!==St||St&&tt.data!==St.data)return!0;k++}return r.attributesNum!==k||r.index!==C}function g(P,N,F,C){const B={},W=N.attributes;let k=0;const et=F.getAttributes();for(const q in et)if(et[q].location>=0){let tt=W[q];tt===void 0&&(q==="instanceMatrix"&&P.instanceMatrix&&(tt=P.instanceMatrix),q==="instanceColor"&&P.instanceColor&&(tt=P.instanceColor));const St={};St.attribute=tt,tt&&tt.data&&(St.data=tt.data),B[q]=St,k++}r.attributes=B,r.attributesNum=k,r.index=C}function S(){const P=r.newAttributes;for(let N=0,F=P.length;N<F;N++)P[N]=0}function m(P){p(P,0)}function p(P,N){const F=r.newAttributes,C=r.enabledAttributes,B=r.attributeDivisors;F[P]=1,C[P]===0&&(n.enableVertexAttribArray(P),C[P]=1),B[P]!==N&&(n.vertexAttribDivisor(P,N),B[P]=N)}function x(){const P=r.newAttributes,N=r.enabledAttributes;for(let F=0,C=N.length;F<C;F++)N[F]!==P[F]&&(n.disableVertexAttribArray(F),N[F]=0)}function y(P,N,F,C,B,W,k){k===!0?n.vertexAttribIPointer(P,N,F,B,W):n.vertexAttribPointer(P,N,F,C,B,W)}function v(P,N,F,C){S();const B=C.attributes,W=F.getAttributes(),k=N.defaultAttributeValues;for(const et in W){const q=W[et];if(q.location>=0){let j=B[et];if(j===void 0&&(et==="instanceMatrix"&&P.instanceMatrix&&(j=P.instanceMatrix),et==="instanceColor"&&P.instanceColor&&(j=P.instanceColor)),j!==void 0){const tt=j.normalized,St=j.itemSize,Dt=t.get(j);if(Dt===void 0)continue;const Z=Dt.buffer,ht=Dt.type,vt=Dt.bytesPerElement,At=ht===n.INT||ht===n.UNSIGNED_INT||j.gpuType===Bl;if(j.isInterleavedBufferAttribute){const mt=j.data,Nt=mt.isInterleavedBuffer===!0?mt.stride:mt.itemSize,he=j.offset;if(mt.isInstancedInterleavedBuffer||mt.isInstancedBufferAttribute){for(let Ct=0;Ct<q.locationSize;Ct++)p(q.location+Ct,mt.meshPerAttribute);P.isInstancedMesh!==!0&&C._maxInstanceCount===void 0&&(C._maxInstanceCount=mt.meshPerAttribute*mt.count)}else for(let Ct=0;Ct<q.locationSize;Ct++)m(q.location+Ct);n.bindBuffer(n.ARRAY_BUFFER,Z);for(let Ct=0;Ct<q.locationSize;Ct++)y(q.location+Ct,St/q.locationSize,ht,tt,Nt*vt,(he+St/q.locationSize*Ct)*vt,At)}else{if(j.isInstancedBufferAttribute){for(let mt=0;mt<q.locationSize;mt++)p(q.location+mt,j.meshPerAttribute);P.isInstancedMesh!==!0&&C._maxInstanceCount===void 0&&(C._maxInstanceCount=j.meshPerAttribute*j.count)}else for(let mt=0;mt<q.locationSize;mt++)m(q.location+mt);n.bindBuffer(n.ARRAY_BUFFER,Z);for(let mt=0;mt<q.locationSize;mt++)y(q.location+mt,St/q.locationSize,ht,tt,St*vt,St/q.locationSize*mt*vt,At)}}else if(k!==void 0){const tt=k[et];if(tt!==void 0)switch(tt.length){case 2:n.vertexAttrib2fv(q.location,tt);break;case 3:n.vertexAttrib3fv(q.location,tt);break;case 4:n.vertexAttrib4fv(q.location,tt);break;default:n.vertexAttrib1fv(q.location,tt)}}}}x()}function M(){D();for(const P in i){const N=i[P];for(const F in N){const C=N[F];for(const B in C){const W=C[B];for(const k in W)h(W[k].object),delete W[k];delete C[B]}}delete i[P]}}function A(P){if(i[P.id]===void 0)return;const N=i[P.id];for(const F in N){const C=N[F];for(const B in C){const W=C[B];for(const k in W)h(W[k].object),delete W[k];delete C[B]}}delete i[P.id]}function _(P){for(const N in i){const F=i[N];for(const C in F){const B=F[C];if(B[P.id]===void 0)continue;const W=B[P.id];for(const k in W)h(W[k].object),delete W[k];delete B[P.id]}}}function E(P){for(const N in i){const F=i[N],C=P.isInstancedMesh===!0?P.id:0,B=F[C];if(B!==void 0){for(const W in B){const k=B[W];for(const et in k)h(k[et].object),delete k[et];delete B[W]}delete F[C],Object.keys(F).length===0&&delete i[N]}}}function D(){w(),a=!0,r!==s&&(r=s,c(r.object))}function w(){s.geometry=null,s.program=null,s.wireframe=!1}return{setup:o,reset:D,resetDefaultState:w,dispose:M,releaseStatesOfGeometry:A,releaseStatesOfObject:E,releaseStatesOfProgram:_,initAttributes:S,enableAttribute:m,disableUnusedAttributes:x}}function Tg(n,t,e){let i;function s(l){i=l}function r(l,c){n.drawArrays(i,l,c),e.update(c,i,1)}function a(l,c,h){h!==0&&(n.drawArraysInstanced(i,l,c,h),e.update(c,i,h))}function o(l,c,h){if(h===0)return;t.get("WEBGL_multi_draw").multiDrawArraysWEBGL(i,l,0,c,0,h);let u=0;for(let f=0;f<h;f++)u+=c[f];e.update(u,i,1)}this.setMode=s,this.render=r,this.renderInstances=a,this.renderMultiDraw=o}function wg(n,t,e,i){let s;function r(){if(s!==void 0)return s;if(t.has("EXT_texture_filter_anisotropic")===!0){const _=t.get("EXT_texture_filter_anisotropic");s=n.getParameter(_.MAX_TEXTURE_MAX_ANISOTROPY_EXT)}else s=0;return s}function a(_){return!(_!==zn&&i.convert(_)!==n.getParameter(n.IMPLEMENTATION_COLOR_READ_FORMAT))}function o(_){const E=_===Gn&&(t.has("EXT_color_buffer_half_float")||t.has("EXT_color_buffer_float"));return!(_!==ln&&_!==Bn&&!E&&i.convert(_)!==n.getParameter(n.IMPLEMENTATION_COLOR_READ_TYPE))}function l(_){if(_==="highp"){if(n.getShaderPrecisionFormat(n.VERTEX_SHADER,n.HIGH_FLOAT).precision>0&&n.getShaderPrecisionFormat(n.FRAGMENT_SHADER,n.HIGH_FLOAT).precision>0)return"highp";_="mediump"}return _==="mediump"&&n.getShaderPrecisionFormat(n.VERTEX_SHADER,n.MEDIUM_FLOAT).precision>0&&n.getShaderPrecisionFormat(n.FRAGMENT_SHADER,n.MEDIUM_FLOAT).precision>0?"mediump":"lowp"}let c=e.precision!==void 0?e.precision:"highp";const h=l(c);h!==c&&(Lt("WebGLRenderer:",c,"not supported, using",h,"instead."),c=h);const d=e.reversedDepthBuffer===!0&&t.has("EXT_clip_control"),u=e.logarithmicDepthBuffer===!0&&d===!1;e.reversedDepthBuffer===!0&&d===!1&&Lt("WebGLRenderer: Unable to use reversed depth buffer due to missing EXT_clip_control extension. Fallback to default depth buffer."),e.logarithmicDepthBuffer===!0&&d===!0&&Lt("WebGLRenderer: Logarithmic depth buffer is ignored when reversed depth buffer is enabled.");const f=n.getParameter(n.MAX_TEXTURE_IMAGE_UNITS),g=n.getParameter(n.MAX_VERTEX_TEXTURE_IMAGE_UNITS),S=n.getParameter(n.MAX_TEXTURE_SIZE),m=n.getParameter(n.MAX_CUBE_MAP_TEXTURE_SIZE),p=n.getParameter(n.MAX_VERTEX_ATTRIBS),x=n.getParameter(n.MAX_VERTEX_UNIFORM_VECTORS),y=n.getParameter(n.MAX_VARYING_VECTORS),v=n.getParameter(n.MAX_FRAGMENT_UNIFORM_VECTORS),M=n.getParameter(n.MAX_SAMPLES),A=n.getParameter(n.SAMPLES);return{isWebGL2:!0,getMaxAnisotropy:r,getMaxPrecision:l,textureFormatReadable:a,textureTypeReadable:o,precision:c,logarithmicDepthBuffer:u,reversedDepthBuffer:d,maxTextures:f,maxVertexTextures:g,maxTextureSize:S,maxCubemapSize:m,maxAttributes:p,maxVertexUniforms:x,maxVaryings:y,maxFragmentUniforms:v,maxSamples:M,samples:A}}function Ag(n){const t=this;let e=null,i=0,s=!1,r=!1;const a=new vn,o=new Ft,l={value:null,needsUpdate:!1};this.uniform=l,this.numPlanes=0,this.numIntersection=0,this.init=function(d,u){const f=d.length!==0||u||i!==0||s;return s=u,i=d.length,f},this.beginShadows=function(){r=!0,h(null)},this.endShadows=function(){r=!1},this.setGlobalState=function(d,u){e=h(d,u,0)},this.setState=function(d,u,f){const g=d.clippingPlanes,S=d.clipIntersection,m=d.clipShadows,p=n.get(d);if(!s||g===null||g.length===0||r&&!m)r?h(null):c();else{const x=r?0:i,y=x*4;let v=p.clippingState||null;l.value=v,v=h(g,u,y,f);for(let M=0;M!==y;++M)v[M]=e[M];p.clippingState=v,this.numIntersection=S?this.numPlanes:0,this.numPlanes+=x}};function c(){l.value!==e&&(l.value=e,l.needsUpdate=i>0),t.numPlanes=i,t.numIntersection=0}function h(d,u,f,g){const S=d!==null?d.length:0;let m=null;if(S!==0){if(m=l.value,g!==!0||m===null){const p=f+S*4,x=u.matrixWorldInverse;o.getNormalMatrix(x),(m===null||m.length<p)&&(m=new Float32Array(p));for(let y=0,v=f;y!==S;++y,v+=4)a.copy(d[y]).applyMatrix4(x,o),a.normal.toArray(m,v),m[v+3]=a.constant}l.value=m,l.needsUpdate=!0}return t.numPlanes=S,t.numIntersection=0,m}}class Zl extends kn{constructor(t=1,e={}){super(t,t,e),this.isWebGLCubeRenderTarget=!0;const i={width:t,height:t,depth:1},s=[i,i,i,i,i,i];this.texture=new ad(s),this._setTextureOptions(e),this.texture.isRenderTargetTexture=!0}fromEquirectangularTexture(t,e){this.texture.type=e.type,this.texture.colorSpace=e.colorSpace,this.texture.generateMipmaps=e.generateMipmaps,this.texture.minFilter=e.minFilter,this.texture.magFilter=e.magFilter;const i={uniforms:{tEquirect:{value:null}},vertexShader:`

				varying vec3 vWorldDirection;

				vec3 transformDirection( in vec3 dir, in mat4 matrix ) {

					return normalize( ( matrix * vec4( dir, 0.0 ) ).xyz );

				}

				void main() {

					vWorldDirection = transformDirection( position, modelMatrix );

					#include <begin_vertex>
					#include <project_vertex>

				}
			`,fragmentShader:`

				uniform sampler2D tEquirect;

				varying vec3 vWorldDirection;

				#include <common>

				void main() {

					vec3 direction = normalize( vWorldDirection );

					vec2 sampleUV = equirectUv( direction );

					gl_FragColor = texture2D( tEquirect, sampleUV );

				}
			`},s=new Qs(5,5,5),r=new ii({name:"CubemapFromEquirect",uniforms:vs(i.uniforms),vertexShader:i.vertexShader,fragmentShader:i.fragmentShader,side:Qe,blending:ps});r.uniforms.tEquirect.value=e;const a=new Sn(s,r),o=e.minFilter;return e.minFilter===gi&&(e.minFilter=$e),new xl(1,10,this).update(t,a),e.minFilter=o,a.geometry.dispose(),a.material.dispose(),this}clear(t,e=!0,i=!0,s=!0){const r=t.getRenderTarget();for(let a=0;a<6;a++)t.setRenderTarget(this,a),t.clear(e,i,s);t.setRenderTarget(r)}}const mu=256,Rg=3,Cg=20,md=256,_d=16,Pg=3,Lg=new I,Dg=new Xt;class Sa{constructor(t){this._renderer=t,this._cubeSize=0,this._sourceTarget=null,this._cubeCamera=new xl(1,10,null),this._boxMesh=new Sn(new Qs(5,5,5),null),this._cubemapMaterial=null,this._equirectMaterial=null,this._blurMaterial=null,this._ggxMaterial=null,this._integrationMaterial=null}fromScene(t,e=0,i=.1,s=100,r={}){const{size:a=256,position:o=Lg}=r,l=this._renderer;this._setSize(a);const c=this._allocateTarget(),h=this._getSourceTarget(!0);e>0&&(h.texture.mipmapsAutoUpdate=!1);const d=l.autoClear,u=l.autoClearColor,f=l.autoClearDepth,g=l.autoClearStencil,S=t.background;l.autoClear=!0,l.autoClearColor=!0,l.autoClearDepth=!0,l.autoClearStencil=!0,S===null&&(t.background=l.getClearColor(Dg));const m=new xl(i,s,h);return m.position.copy(o),m.update(l,t),l.autoClear=d,l.autoClearColor=u,l.autoClearDepth=f,l.autoClearStencil=g,t.background=S,e>0&&(h.texture.mipmapsAutoUpdate=!0,this._blur(c,e)),this._applyPMREM(c),c}fromEquirectangular(t,e=null){return this._fromTexture(t,e)}fromCubemap(t,e=null){return this._fromTexture(t,e)}compileCubemapShader(){this._cubemapMaterial===null&&(this._cubemapMaterial=xu(),this._compileMaterial(this._cubemapMaterial))}compileEquirectangularShader(){this._equirectMaterial===null&&(this._equirectMaterial=gu(),this._compileMaterial(this._equirectMaterial))}dispose(){this._sourceTarget!==null&&this._sourceTarget.dispose(),this._cubemapMaterial!==null&&this._cubemapMaterial.dispose(),this._equirectMaterial!==null&&this._equirectMaterial.dispose(),this._blurMaterial!==null&&this._blurMaterial.dispose(),this._ggxMaterial!==null&&this._ggxMaterial.dispose(),this._integrationMaterial!==null&&this._integrationMaterial.dispose(),this._boxMesh.geometry.dispose()}static lodToRoughness(t,e){return e>0?1-Math.sqrt(1-t/e):0}_setSize(t){this._cubeSize=Math.max(mu,Jf(t))}_fromTexture(t,e){t.mapping===_s||t.mapping===Ws?this._setSize(t.image.length===0?mu:t.image[0].width||t.image[0].image.width):this._setSize(t.image.width/4);const i=e||this._allocateTarget();return this._textureToCubemap(t),this._applyPMREM(i),i}_allocateTarget(){const t=this._cubeSize,e=_u(t,!1,!1),i=Math.log2(t)-Rg;for(let s=0;s<=i;s++)e.texture.mipmaps.push({width:t>>s,height:t>>s});return e.texture.name="PMREM",e.texture.isPMREMTexture=!0,e}_getSourceTarget(t=!1){const e=this._cubeSize,i=this._sourceTarget;return(i===null||i.width!==e||t&&i.depthBuffer===!1)&&(i!==null&&i.dispose(),this._sourceTarget=_u(e,!0,t)),this._sourceTarget}_compileMaterial(t){this._boxMesh.material=t,this._renderer.compile(this._boxMesh,this._cubeCamera.children[0])}_renderCube(t,e,i){const s=this._boxMesh,r=this._cubeCamera;s.material=i,r.renderTarget=t,r.activeMipmapLevel=e;const a=t.width>>e;t.viewport.set(0,0,a,a),r.update(this._renderer,s),t.viewport.set(0,0,t.width,t.height)}_textureToCubemap(t){let e;t.mapping===_s||t.mapping===Ws?(this._cubemapMaterial===null&&(this._cubemapMaterial=xu()),e=this._cubemapMaterial,e.uniforms.flipEnvMap.value=t.isRenderTargetTexture===!1?-1:1):(this._equirectMaterial===null&&(this._equirectMaterial=gu()),e=this._equirectMaterial),e.uniforms.envMap.value=t,this._renderCube(this._getSourceTarget(),0,e)}_applyPMREM(t){this._ggxMaterial===null&&(this._ggxMaterial=Ng(),this._integrationMaterial=Ig());const e=this._cubeSize,i=t.texture.mipmaps.length-1,s=this._ggxMaterial.uniforms;s.envMap.value=this._sourceTarget.texture;const r=this._integrationMaterial.uniforms;r.envMap.value=this._sourceTarget.texture,r.sourceLod.value=Math.log2(e/_d);for(let a=0;a<=i;a++){const o=Sa.lodToRoughness(a,i);if(a>i-Pg)r.roughness.value=o,this._renderCube(t,a,this._integrationMaterial);else{const l=o>0?Math.log2(e)+.5*Math.log2(6/(md*Math.pow(o,4)))+.5:0;s.roughness.value=o,s.lodBias.value=l,this._renderCube(t,a,this._ggxMaterial)}}}_blur(t,e){this._blurMaterial===null&&(this._blurMaterial=Ug());const i=this._blurMaterial,s=i.uniforms,r=this._sourceTarget;s.sigma.value=Math.min(e,Math.PI)/Math.SQRT2,s.envMap.value=r.texture,this._renderCube(t,0,i),s.envMap.value=t.texture,this._renderCube(r,0,i)}}function _u(n,t,e){return new Zl(n,{minFilter:gi,generateMipmaps:t,type:Gn,colorSpace:jn,depthBuffer:e})}function js(n,t,e){return new ii({name:n,uniforms:t,vertexShader:kt.cube_vert,fragmentShader:e,side:Qe,blending:ps,depthTest:!1,depthWrite:!1})}function Ng(){return js("PMREMGGXConvolution",{envMap:{value:null},roughness:{value:0},lodBias:{value:0}},`

		#define GGX_SAMPLES ${md}u

		varying vec3 vWorldDirection;

		uniform samplerCube envMap;
		uniform float roughness;
		uniform float lodBias;

		#include <common>

		// Van der Corput radical inverse
		float radicalInverse_VdC( uint bits ) {

			bits = ( bits << 16u ) | ( bits >> 16u );
			bits = ( ( bits & 0x55555555u ) << 1u ) | ( ( bits & 0xAAAAAAAAu ) >> 1u );
			bits = ( ( bits & 0x33333333u ) << 2u ) | ( ( bits & 0xCCCCCCCCu ) >> 2u );
			bits = ( ( bits & 0x0F0F0F0Fu ) << 4u ) | ( ( bits & 0xF0F0F0F0u ) >> 4u );
			bits = ( ( bits & 0x00FF00FFu ) << 8u ) | ( ( bits & 0xFF00FF00u ) >> 8u );
			return float( bits ) * 2.3283064365386963e-10; // / 0x100000000

		}

		// Hammersley sequence
		vec2 hammersley( uint i, uint N ) {

			return vec2( float( i ) / float( N ), radicalInverse_VdC( i ) );

		}

		void main() {

			vec3 N = normalize( vWorldDirection );

			// For very low roughness, just sample the environment directly
			if ( roughness < 0.001 ) {

				gl_FragColor = vec4( textureLod( envMap, N, 0.0 ).rgb, 1.0 );
				return;

			}

			float alpha = roughness * roughness;
			float alpha2 = alpha * alpha;

			// Tangent space basis for VNDF sampling
			vec3 up = abs( N.z ) < 0.999 ? vec3( 0.0, 0.0, 1.0 ) : vec3( 1.0, 0.0, 0.0 );
			vec3 tangent = normalize( cross( up, N ) );
			vec3 bitangent = cross( N, tangent );

			vec3 prefilteredColor = vec3( 0.0 );
			float totalWeight = 0.0;

			for ( uint i = 0u; i < GGX_SAMPLES; i ++ ) {

				vec2 Xi = hammersley( i, GGX_SAMPLES );

				// With V = N, sample the reflected direction directly.
				float invQ = 1.0 / ( 1.0 - Xi.x + alpha2 * Xi.x );
				float NdotL = ( 1.0 - Xi.x - alpha2 * Xi.x ) * invQ;

				if ( NdotL > 0.0 ) {

					float phi = 2.0 * PI * Xi.y;
					float sinTheta = 2.0 * alpha * sqrt( Xi.x * ( 1.0 - Xi.x ) ) * invQ;
					vec3 L = N * NdotL + ( tangent * cos( phi ) + bitangent * sin( phi ) ) * sinTheta;

					// Match the source mip to the sample's solid angle. The terms
					// independent of the sample are precomputed in lodBias.
					float d = alpha2 * invQ;
					float lod = max( log2( d ) + lodBias, 0.0 );

					// Weight by NdotL for the split-sum approximation
					prefilteredColor += textureLod( envMap, L, lod ).rgb * NdotL;
					totalWeight += NdotL;

				}

			}

			gl_FragColor = vec4( prefilteredColor / totalWeight, 1.0 );

		}
	`)}function Ig(){return js("PMREMGGXIntegration",{envMap:{value:null},roughness:{value:0},sourceLod:{value:0},sourceSize:{value:_d}},`

		varying vec3 vWorldDirection;

		uniform samplerCube envMap;
		uniform float roughness;
		uniform float sourceLod;
		uniform int sourceSize;

		void main() {

			vec3 N = normalize( vWorldDirection );

			float alpha = roughness * roughness;
			float alpha2 = alpha * alpha;

			float texelSize = 2.0 / float( sourceSize );

			vec3 prefilteredColor = vec3( 0.0 );
			float totalWeight = 0.0;

			// Pair opposite texels: only the one in N's hemisphere contributes.
			for ( int face = 0; face < 3; face ++ ) {

				for ( int y = 0; y < sourceSize; y ++ ) {

					for ( int x = 0; x < sourceSize; x ++ ) {

						vec2 uv = ( vec2( x, y ) + 0.5 ) * texelSize - 1.0;
						vec3 texelDirection = face == 0 ? vec3( 1.0, uv ) : ( face == 1 ? vec3( uv.x, 1.0, uv.y ) : vec3( uv, 1.0 ) );

						float invDistance = inversesqrt( 1.0 + dot( uv, uv ) );
						float NdotL = dot( N, texelDirection );
						texelDirection *= NdotL < 0.0 ? - 1.0 : 1.0;
						NdotL = abs( NdotL ) * invDistance;

						// With V = N, NdotH squared is ( 1 + NdotL ) / 2. Common factors
						// in the GGX distribution and texel solid angle cancel when normalized.
						float d = 1.0 + alpha2 + ( alpha2 - 1.0 ) * NdotL;
						float weight = NdotL * invDistance * invDistance * invDistance / ( d * d );

						prefilteredColor += textureLod( envMap, texelDirection, sourceLod ).rgb * weight;
						totalWeight += weight;

					}

				}

			}

			gl_FragColor = vec4( prefilteredColor / totalWeight, 1.0 );

		}
	`)}function Ug(){return js("PMREMSphericalGaussianBlur",{envMap:{value:null},sigma:{value:0}},`

		#define SAMPLES ${Cg}
		#define GOLDEN_ANGLE 2.39996322973

		varying vec3 vWorldDirection;

		uniform samplerCube envMap;
		uniform float sigma;

		#include <common>

		void main() {

			vec3 outputDirection = normalize( vWorldDirection );

			vec3 up = abs( outputDirection.z ) < 0.999 ? vec3( 0.0, 0.0, 1.0 ) : vec3( 1.0, 0.0, 0.0 );
			vec3 tangent = normalize( cross( up, outputDirection ) );
			vec3 bitangent = cross( outputDirection, tangent );

			// Truncate the kernel at three standard deviations or at the antipode.
			float thetaMax = min( 3.0 * sigma, PI );
			float truncation = 1.0 - exp( - 0.5 * thetaMax * thetaMax / ( sigma * sigma ) );

			vec3 accumColor = vec3( 0.0 );
			float accumWeight = 0.0;

			for ( int i = 0; i < SAMPLES; i ++ ) {

				// Stratified inverse-CDF sampling of the Gaussian, placed on a golden-angle spiral.
				float stratum = ( float( i ) + 0.5 ) / float( SAMPLES );
				float theta = sigma * sqrt( - 2.0 * log( 1.0 - stratum * truncation ) );
				float phi = float( i ) * GOLDEN_ANGLE;

				vec3 offset = cos( phi ) * tangent + sin( phi ) * bitangent;
				vec3 sampleDirection = cos( theta ) * outputDirection + sin( theta ) * offset;

				// Correct the planar sample density to solid angle.
				float weight = sin( theta ) / theta;

				accumColor += weight * textureLod( envMap, sampleDirection, 0.0 ).rgb;
				accumWeight += weight;

			}

			gl_FragColor = vec4( accumColor / accumWeight, 1.0 );

		}
	`)}function gu(){return js("PMREMEquirectangularToCubemap",{envMap:{value:null}},`

		varying vec3 vWorldDirection;

		uniform sampler2D envMap;

		#include <common>

		void main() {

			// Average four subpixel samples to preserve small, bright features.
			vec3 direction = normalize( vWorldDirection );
			vec3 dx = dFdx( direction ) * 0.25;
			vec3 dy = dFdy( direction ) * 0.25;

			vec3 color = textureLod( envMap, equirectUv( normalize( direction - dx - dy ) ), 0.0 ).rgb;
			color += textureLod( envMap, equirectUv( normalize( direction + dx - dy ) ), 0.0 ).rgb;
			color += textureLod( envMap, equirectUv( normalize( direction - dx + dy ) ), 0.0 ).rgb;
			color += textureLod( envMap, equirectUv( normalize( direction + dx + dy ) ), 0.0 ).rgb;
			gl_FragColor = vec4( color * 0.25, 1.0 );

		}
	`)}function xu(){return js("PMREMCubemapToCubemap",{envMap:{value:null},flipEnvMap:{value:-1}},`

		varying vec3 vWorldDirection;

		uniform samplerCube envMap;
		uniform float flipEnvMap;

		void main() {

			gl_FragColor = vec4( textureCube( envMap, vec3( flipEnvMap * vWorldDirection.x, vWorldDirection.yz ) ).rgb, 1.0 );

		}
	`)}function Fg(n){let t=new WeakMap,e=new WeakMap,i=null;function s(u,f=!1){return u==null?null:f?a(u):r(u)}function r(u){if(u&&u.isTexture){const f=u.mapping;if(f===Ia||f===Ua)if(t.has(u)){const g=t.get(u).texture;return o(g,u.mapping)}else{const g=u.image;if(g&&g.height>0){const S=new Zl(g.height);return S.fromEquirectangularTexture(n,u),t.set(u,S),u.addEventListener("dispose",c),o(S.texture,u.mapping)}else return null}}return u}function a(u){if(u&&u.isTexture&&u.isPMREMTexture!==!0){const f=u.mapping,g=f===Ia||f===Ua,S=f===_s||f===Ws;if(g||S){let m=e.get(u);const p=m!==void 0?m.texture.pmremVersion:0;if(u.isRenderTargetTexture&&u.pmremVersion!==p)return i===null&&(i=new Sa(n)),m=g?i.fromEquirectangular(u,m):i.fromCubemap(u,m),m.texture.pmremVersion=u.pmremVersion,e.set(u,m),m.texture;if(m!==void 0)return m.texture;{const x=u.image;return g&&x&&x.height>0||S&&x&&l(x)?(i===null&&(i=new Sa(n)),m=g?i.fromEquirectangular(u):i.fromCubemap(u),m.texture.pmremVersion=u.pmremVersion,e.set(u,m),u.addEventListener("dispose",h),m.texture):null}}}return u}function o(u,f){return f===Ia?u.mapping=_s:f===Ua&&(u.mapping=Ws),u}function l(u){let f=0;const g=6;for(let S=0;S<g;S++)u[S]!==void 0&&f++;return f===g}function c(u){const f=u.target;f.removeEventListener("dispose",c);const g=t.get(f);g!==void 0&&(t.delete(f),g.dispose())}function h(u){const f=u.target;f.removeEventListener("dispose",h);const g=e.get(f);g!==void 0&&(e.delete(f),g.dispose())}function d(){t=new WeakMap,e=new WeakMap,i!==null&&(i.dispose(),i=null)}return{get:s,dispose:d}}function Og(n){const t={};function e(i){if(t[i]!==void 0)return t[i];const s=n.getExtension(i);return t[i]=s,s}return{has:function(i){return e(i)!==null},init:function(){e("EXT_color_buffer_float"),e("WEBGL_clip_cull_distance"),e("OES_texture_float_linear"),e("EXT_color_buffer_half_float"),e("WEBGL_multisampled_render_to_texture"),e("WEBGL_render_shared_exponent")},get:function(i){const s=e(i);return s===null&&sa("WebGLRenderer: "+i+" extension not supported."),s}}}function Bg(n,t,e,i){const s={},r=new WeakMap,a=new FinalizationRegistry(g=>delete s[g]);function o(g){l(g.target)}function l(g){g.index!==null&&t.remove(g.index);for(const m in g.attributes)t.remove(g.attributes[m]);g.removeEventListener("dispose",o),delete s[g.id],a.unregister(g);const S=r.get(g);S&&(t.remove(S),r.delete(g)),i.releaseStatesOfGeometry(g),g.isInstancedBufferGeometry===!0&&delete g._maxInstanceCount,e.memory.geometries--}function c(g,S){return s[S.id]!==void 0||(S.addEventListener("dispose",o),s[S.id]=new WeakRef(S),a.register(S,S.id,S),e.memory.geometries++),S}function h(g){const S=g.attributes;for(const m in S)t.update(S[m],n.ARRAY_BUFFER)}function d(g){const S=g.index,m=g.attributes.position;let p=0;if(m===void 0)return;const x=S!==null?S.array.length:m.array.length/3-1,y=m.count>=65535?id:nd,v=new y(Math.ceil(x/3)*6,1),M=v.array;if(S!==null){const _=S.array;p=S.version;for(let E=0,D=0;E<x;E+=3){const w=_[E+0],P=_[E+1],N=_[E+2];M[D++]=w,M[D++]=P,M[D++]=P,M[D++]=N,M[D++]=N,M[D++]=w}}else{p=m.version;for(let _=0,E=0;_<x;_+=3){const D=_+0,w=_+1,P=_+2;M[E++]=D,M[E++]=w,M[E++]=w,M[E++]=P,M[E++]=P,M[E++]=D}}v.version=p;const A=r.get(g);A&&t.remove(A),r.set(g,v)}function u(g){const S=r.get(g);if(S){const m=g.index;m!==null&&S.version<m.version&&d(g)}else d(g);return r.get(g)}function f(){for(const g in s){const S=s[g].deref();S!==void 0&&l(S)}}return{get:c,update:h,getWireframeAttribute:u,dispose:f}}function zg(n,t,e){let i;function s(d){i=d}let r,a;function o(d){r=d.type,a=d.bytesPerElement}function l(d,u){n.drawElements(i,u,r,d*a),e.update(u,i,1)}function c(d,u,f){f!==0&&(n.drawElementsInstanced(i,u,r,d*a,f),e.update(u,i,f))}function h(d,u,f){if(f===0)return;t.get("WEBGL_multi_draw").multiDrawElementsWEBGL(i,u,0,r,d,0,f);let S=0;for(let m=0;m<f;m++)S+=u[m];e.update(S,i,1)}this.setMode=s,this.setIndex=o,this.render=l,this.renderInstances=c,this.renderMultiDraw=h}function kg(n){const t={geometries:0,textures:0},e={frame:0,calls:0,triangles:0,points:0,lines:0};function i(r,a,o){switch(e.calls++,a){case n.TRIANGLES:e.triangles+=o*(r/3);break;case n.LINES:e.lines+=o*(r/2);break;case n.LINE_STRIP:e.lines+=o*(r-1);break;case n.LINE_LOOP:e.lines+=o*r;break;case n.POINTS:e.points+=o*r;break;default:Zt("WebGLInfo: Unknown draw mode:",a);break}}function s(){e.calls=0,e.triangles=0,e.points=0,e.lines=0}return{memory:t,render:e,programs:null,autoReset:!0,reset:s,update:i}}function Hg(n,t,e){const i=new WeakMap,s=new fe;function r(a,o,l){const c=a.morphTargetInfluences,h=o.morphAttributes.position||o.morphAttributes.normal||o.morphAttributes.color,d=h!==void 0?h.length:0;let u=i.get(o);if(u===void 0||u.count!==d){let w=function(){E.dispose(),i.delete(o),o.removeEventListener("dispose",w)};var f=w;u!==void 0&&u.texture.dispose();const g=o.morphAttributes.position!==void 0,S=o.morphAttributes.normal!==void 0,m=o.morphAttributes.color!==void 0,p=o.morphAttributes.position||[],x=o.morphAttributes.normal||[],y=o.morphAttributes.color||[];let v=0;g===!0&&(v=1),S===!0&&(v=2),m===!0&&(v=3);let M=o.attributes.position.count*v,A=1;M>t.maxTextureSize&&(A=Math.ceil(M/t.maxTextureSize),M=t.maxTextureSize);const _=new Float32Array(M*A*4*d),E=new td(_,M,A,d);E.type=Bn,E.needsUpdate=!0;const D=v*4;for(let P=0;P<d;P++){const N=p[P],F=x[P],C=y[P],B=M*A*4*P;for(let W=0;W<N.count;W++){const k=W*D;g===!0&&(s.fromBufferAttribute(N,W),_[B+k+0]=s.x,_[B+k+1]=s.y,_[B+k+2]=s.z,_[B+k+3]=0),S===!0&&(s.fromBufferAttribute(F,W),_[B+k+4]=s.x,_[B+k+5]=s.y,_[B+k+6]=s.z,_[B+k+7]=0),m===!0&&(s.fromBufferAttribute(C,W),_[B+k+8]=s.x,_[B+k+9]=s.y,_[B+k+10]=s.z,_[B+k+11]=C.itemSize===4?s.w:1)}}u={count:d,texture:E,size:new Rt(M,A)},i.set(o,u),o.addEventListener("dispose",w)}if(a.isInstancedMesh===!0&&a.morphTexture!==null)l.getUniforms().setValue(n,"morphTexture",a.morphTexture,e);else{let g=0;for(let m=0;m<c.length;m++)g+=c[m];const S=o.morphTargetsRelative?1:1-g;l.getUniforms().setValue(n,"morphTargetBaseInfluence",S),l.getUniforms().setValue(n,"morphTargetInfluences",c)}l.getUniforms().setValue(n,"morphTargetsTexture",u.texture,e),l.getUniforms().setValue(n,"morphTargetsTextureSize",u.size)}return{update:r}}function Gg(n,t,e,i,s){let r=new WeakMap;function a(c){const h=s.render.frame,d=c.geometry,u=t.get(c,d);if(r.get(u)!==h&&(t.update(u),r.set(u,h)),c.isInstancedMesh&&(c.hasEventListener("dispose",l)===!1&&c.addEventListener("dispose",l),r.get(c)!==h&&(e.update(c.instanceMatrix,n.ARRAY_BUFFER),c.instanceColor!==null&&e.update(c.instanceColor,n.ARRAY_BUFFER),r.set(c,h))),c.isSkinnedMesh){const f=c.skeleton;r.get(f)!==h&&(f.update(),r.set(f,h))}return u}function o(){r=new WeakMap}function l(c){const h=c.target;h.removeEventListener("dispose",l),i.releaseStatesOfObject(h),e.remove(h.instanceMatrix),h.instanceColor!==null&&e.remove(h.instanceColor)}return{update:a,dispose:o}}const Vg={[Dh]:"LINEAR_TONE_MAPPING",[Nh]:"REINHARD_TONE_MAPPING",[Ih]:"CINEON_TONE_MAPPING",[Uh]:"ACES_FILMIC_TONE_MAPPING",[Oh]:"AGX_TONE_MAPPING",[Bh]:"NEUTRAL_TONE_MAPPING",[Fh]:"CUSTOM_TONE_MAPPING"};function Wg(n,t,e,i,s,r){const a=new kn(t,e,{type:n,depthBuffer:s,stencilBuffer:r,samples:i?4:0,storeMultisampledDepthBuffer:!1,storeMultisampledStencilBuffer:!1,resolveDepthBuffer:!1,resolveStencilBuffer:!1});let o=null,l=null,c=null;const h=new hn;h.setAttribute("position",new Fe([-1,3,0,-1,-1,0,3,-1,0],3)),h.setAttribute("uv",new Fe([0,2,0,0,2,0],2));const d=new Rp({uniforms:{tDiffuse:{value:null}},vertexShader:`
			precision highp float;

			uniform mat4 modelViewMatrix;
			uniform mat4 projectionMatrix;

			attribute vec3 position;
			attribute vec2 uv;

			varying vec2 vUv;

			void main() {
				vUv = uv;
				gl_Position = projectionMatrix * modelViewMatrix * vec4( position, 1.0 );
			}`,fragmentShader:`
			precision highp float;

			uniform sampler2D tDiffuse;

			varying vec2 vUv;

			#include <tonemapping_pars_fragment>
			#include <colorspace_pars_fragment>

			void main() {
				gl_FragColor = texture2D( tDiffuse, vUv );

				#ifdef LINEAR_TONE_MAPPING
					gl_FragColor.rgb = LinearToneMapping( gl_FragColor.rgb );
				#elif defined( REINHARD_TONE_MAPPING )
					gl_FragColor.rgb = ReinhardToneMapping( gl_FragColor.rgb );
				#elif defined( CINEON_TONE_MAPPING )
					gl_FragColor.rgb = CineonToneMapping( gl_FragColor.rgb );
				#elif defined( ACES_FILMIC_TONE_MAPPING )
					gl_FragColor.rgb = ACESFilmicToneMapping( gl_FragColor.rgb );
				#elif defined( AGX_TONE_MAPPING )
					gl_FragColor.rgb = AgXToneMapping( gl_FragColor.rgb );
				#elif defined( NEUTRAL_TONE_MAPPING )
					gl_FragColor.rgb = NeutralToneMapping( gl_FragColor.rgb );
				#elif defined( CUSTOM_TONE_MAPPING )
					gl_FragColor.rgb = CustomToneMapping( gl_FragColor.rgb );
				#endif

				#ifdef SRGB_TRANSFER
					gl_FragColor = sRGBTransferOETF( gl_FragColor );
				#endif
			}`,depthTest:!1,depthWrite:!1}),u=new Sn(h,d),f=new dd(-1,1,1,-1,0,1);let g=null,S=null,m=!1,p,x=null,y=[],v=!1;this.setSize=function(M,A){a.setSize(M,A),o!==null&&o.setSize(M,A),l!==null&&l.setSize(M,A);for(let _=0;_<y.length;_++){const E=y[_];E.setSize&&E.setSize(M,A)}},this.setEffects=function(M){y=M,v=y.length>0&&y[0].isRenderPass===!0;const A=a.width,_=a.height;y.length>0&&o===null&&(o=new kn(A,_,{type:Gn,depthBuffer:!1,stencilBuffer:!1}),l=new kn(A,_,{type:Gn,depthBuffer:!1,stencilBuffer:!1}));const E=s===!0&&y.some(D=>D.needsDepthTexture===!0);E!==(a.depthTexture!==null)&&(E===!0&&c===null&&(c=new xs(A,_),r===!0&&(c.format=xi,c.type=gs)),a.dispose(),a.depthTexture=E?c:null,a.resolveDepthBuffer=E,a.storeMultisampledDepthBuffer=E);for(let D=0;D<y.length;D++){const w=y[D];w.setSize&&w.setSize(A,_),E&&w.needsDepthTexture===!0&&w.setDepthTexture&&w.setDepthTexture(c)}},this.begin=function(M,A){if(m||M.toneMapping===ti&&y.length===0)return!1;if(x=A,A!==null){const _=A.width,E=A.height;(a.width!==_||a.height!==E)&&this.setSize(_,E)}return v===!1&&M.setRenderTarget(a),p=M.toneMapping,M.toneMapping=ti,!0},this.hasRenderPass=function(){return v},this.end=function(M,A){M.toneMapping=p,m=!0;let _=a,E=o;for(let D=0;D<y.length;D++){const w=y[D];w.enabled!==!1&&(w.render(M,E,_,A),w.needsSwap!==!1&&(_=E,E=E===o?l:o))}if(g!==M.outputColorSpace||S!==M.toneMapping){g=M.outputColorSpace,S=M.toneMapping,d.defines={},qt.getTransfer(g)===te&&(d.defines.SRGB_TRANSFER="");const D=Vg[S];D&&(d.defines[D]=""),d.needsUpdate=!0}d.uniforms.tDiffuse.value=_.texture,M.setRenderTarget(x),M.render(u,f),x=null,m=!1},this.isCompositing=function(){return m},this.dispose=function(){a.dispose(),o!==null&&o.dispose(),l!==null&&l.dispose(),h.dispose(),d.dispose()}}const gd=new je,xd=new xs(1,1),vd=new od(1),Sd=new td,Md=new sp,yd=new ad,vu=[],Su=[],Mu=new Float32Array(16),yu=new Float32Array(9),Eu=new Float32Array(4);function Ms(n,t,e){const i=n[0];if(i<=0||i>0)return n;const s=t*e;let r=vu[s];if(r===void 0&&(r=new Float32Array(s),vu[s]=r),t!==0){i.toArray(r,0);for(let a=1,o=0;a!==t;++a)o+=e,n[a].toArray(r,o)}return r}function Ae(n,t){if(n.length!==t.length)return!1;for(let e=0,i=n.length;e<i;e++)if(n[e]!==t[e])return!1;return!0}function Re(n,t){for(let e=0,i=t.length;e<i;e++)n[e]=t[e]}function wa(n,t){let e=Su[t];e===void 0&&(e=new Int32Array(t),Su[t]=e);for(let i=0;i!==t;++i)e[i]=n.allocateTextureUnit();return e}function Xg(n,t){const e=this.cache;e[0]!==t&&(n.uniform1f(this.addr,t),e[0]=t)}function qg(n,t){const e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y)&&(n.uniform2f(this.addr,t.x,t.y),e[0]=t.x,e[1]=t.y);else{if(Ae(e,t))return;n.uniform2fv(this.addr,t),Re(e,t)}}function $g(n,t){const e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z)&&(n.uniform3f(this.addr,t.x,t.y,t.z),e[0]=t.x,e[1]=t.y,e[2]=t.z);else if(t.r!==void 0)(e[0]!==t.r||e[1]!==t.g||e[2]!==t.b)&&(n.uniform3f(this.addr,t.r,t.g,t.b),e[0]=t.r,e[1]=t.g,e[2]=t.b);else{if(Ae(e,t))return;n.uniform3fv(this.addr,t),Re(e,t)}}function Yg(n,t){const e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z||e[3]!==t.w)&&(n.uniform4f(this.addr,t.x,t.y,t.z,t.w),e[0]=t.x,e[1]=t.y,e[2]=t.z,e[3]=t.w);else{if(Ae(e,t))return;n.uniform4fv(this.addr,t),Re(e,t)}}function Kg(n,t){const e=this.cache,i=t.elements;if(i===void 0){if(Ae(e,t))return;n.uniformMatrix2fv(this.addr,!1,t),Re(e,t)}else{if(Ae(e,i))return;Eu.set(i),n.uniformMatrix2fv(this.addr,!1,Eu),Re(e,i)}}function Zg(n,t){const e=this.cache,i=t.elements;if(i===void 0){if(Ae(e,t))return;n.uniformMatrix3fv(this.addr,!1,t),Re(e,t)}else{if(Ae(e,i))return;yu.set(i),n.uniformMatrix3fv(this.addr,!1,yu),Re(e,i)}}function Jg(n,t){const e=this.cache,i=t.elements;if(i===void 0){if(Ae(e,t))return;n.uniformMatrix4fv(this.addr,!1,t),Re(e,t)}else{if(Ae(e,i))return;Mu.set(i),n.uniformMatrix4fv(this.addr,!1,Mu),Re(e,i)}}function Qg(n,t){const e=this.cache;e[0]!==t&&(n.uniform1i(this.addr,t),e[0]=t)}function jg(n,t){const e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y)&&(n.uniform2i(this.addr,t.x,t.y),e[0]=t.x,e[1]=t.y);else{if(Ae(e,t))return;n.uniform2iv(this.addr,t),Re(e,t)}}function t0(n,t){const e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z)&&(n.uniform3i(this.addr,t.x,t.y,t.z),e[0]=t.x,e[1]=t.y,e[2]=t.z);else{if(Ae(e,t))return;n.uniform3iv(this.addr,t),Re(e,t)}}function e0(n,t){const e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z||e[3]!==t.w)&&(n.uniform4i(this.addr,t.x,t.y,t.z,t.w),e[0]=t.x,e[1]=t.y,e[2]=t.z,e[3]=t.w);else{if(Ae(e,t))return;n.uniform4iv(this.addr,t),Re(e,t)}}function n0(n,t){const e=this.cache;e[0]!==t&&(n.uniform1ui(this.addr,t),e[0]=t)}function i0(n,t){const e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y)&&(n.uniform2ui(this.addr,t.x,t.y),e[0]=t.x,e[1]=t.y);else{if(Ae(e,t))return;n.uniform2uiv(this.addr,t),Re(e,t)}}function s0(n,t){const e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z)&&(n.uniform3ui(this.addr,t.x,t.y,t.z),e[0]=t.x,e[1]=t.y,e[2]=t.z);else{if(Ae(e,t))return;n.uniform3uiv(this.addr,t),Re(e,t)}}function r0(n,t){const e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z||e[3]!==t.w)&&(n.uniform4ui(this.addr,t.x,t.y,t.z,t.w),e[0]=t.x,e[1]=t.y,e[2]=t.z,e[3]=t.w);else{if(Ae(e,t))return;n.uniform4uiv(this.addr,t),Re(e,t)}}function Aa(n){return n.version===0&&(n.compareFunction=Kh,n.needsUpdate=!0),n}function a0(n,t,e){const i=this.cache,s=e.allocateTextureUnit();i[0]!==s&&(n.uniform1i(this.addr,s),i[0]=s);let r;this.type===n.SAMPLER_2D_SHADOW?r=Aa(xd):r=gd,e.setTexture2D(t||r,s)}function o0(n,t,e){const i=this.cache,s=e.allocateTextureUnit();i[0]!==s&&(n.uniform1i(this.addr,s),i[0]=s),e.setTexture3D(t||Md,s)}function l0(n,t,e){const i=this.cache,s=e.allocateTextureUnit();i[0]!==s&&(n.uniform1i(this.addr,s),i[0]=s);let r;this.type===n.SAMPLER_CUBE_SHADOW?r=Aa(vd):r=yd,e.setTextureCube(t||r,s)}function c0(n,t,e){const i=this.cache,s=e.allocateTextureUnit();i[0]!==s&&(n.uniform1i(this.addr,s),i[0]=s),e.setTexture2DArray(t||Sd,s)}function u0(n){switch(n){case 5126:return Xg;case 35664:return qg;case 35665:return $g;case 35666:return Yg;case 35674:return Kg;case 35675:return Zg;case 35676:return Jg;case 5124:case 35670:return Qg;case 35667:case 35671:return jg;case 35668:case 35672:return t0;case 35669:case 35673:return e0;case 5125:return n0;case 36294:return i0;case 36295:return s0;case 36296:return r0;case 35678:case 36198:case 36298:case 36306:case 35682:return a0;case 35679:case 36299:case 36307:return o0;case 35680:case 36300:case 36308:case 36293:return l0;case 36289:case 36303:case 36311:case 36292:return c0}}function h0(n,t){n.uniform1fv(this.addr,t)}function d0(n,t){const e=Ms(t,this.size,2);n.uniform2fv(this.addr,e)}function f0(n,t){const e=Ms(t,this.size,3);n.uniform3fv(this.addr,e)}function p0(n,t){const e=Ms(t,this.size,4);n.uniform4fv(this.addr,e)}function m0(n,t){const e=Ms(t,this.size,4);n.uniformMatrix2fv(this.addr,!1,e)}function _0(n,t){const e=Ms(t,this.size,9);n.uniformMatrix3fv(this.addr,!1,e)}function g0(n,t){const e=Ms(t,this.size,16);n.uniformMatrix4fv(this.addr,!1,e)}function x0(n,t){n.uniform1iv(this.addr,t)}function v0(n,t){n.uniform2iv(this.addr,t)}function S0(n,t){n.uniform3iv(this.addr,t)}function M0(n,t){n.uniform4iv(this.addr,t)}function y0(n,t){n.uniform1uiv(this.addr,t)}function E0(n,t){n.uniform2uiv(this.addr,t)}function b0(n,t){n.uniform3uiv(this.addr,t)}function T0(n,t){n.uniform4uiv(this.addr,t)}function w0(n,t,e){const i=this.cache,s=t.length,r=wa(e,s);Ae(i,r)||(n.uniform1iv(this.addr,r),Re(i,r));let a;this.type===n.SAMPLER_2D_SHADOW?a=Aa(xd):a=gd;for(let o=0;o!==s;++o)e.setTexture2D(t[o]||a,r[o])}function A0(n,t,e){const i=this.cache,s=t.length,r=wa(e,s);Ae(i,r)||(n.uniform1iv(this.addr,r),Re(i,r));for(let a=0;a!==s;++a)e.setTexture3D(t[a]||Md,r[a])}function R0(n,t,e){const i=this.cache,s=t.length,r=wa(e,s);Ae(i,r)||(n.uniform1iv(this.addr,r),Re(i,r));let a;this.type===n.SAMPLER_CUBE_SHADOW?a=Aa(vd):a=yd;for(let o=0;o!==s;++o)e.setTextureCube(t[o]||a,r[o])}function C0(n,t,e){const i=this.cache,s=t.length,r=wa(e,s);Ae(i,r)||(n.uniform1iv(this.addr,r),Re(i,r));for(let a=0;a!==s;++a)e.setTexture2DArray(t[a]||Sd,r[a])}function P0(n){switch(n){case 5126:return h0;case 35664:return d0;case 35665:return f0;case 35666:return p0;case 35674:return m0;case 35675:return _0;case 35676:return g0;case 5124:case 35670:return x0;case 35667:case 35671:return v0;case 35668:case 35672:return S0;case 35669:case 35673:return M0;case 5125:return y0;case 36294:return E0;case 36295:return b0;case 36296:return T0;case 35678:case 36198:case 36298:case 36306:case 35682:return w0;case 35679:case 36299:case 36307:return A0;case 35680:case 36300:case 36308:case 36293:return R0;case 36289:case 36303:case 36311:case 36292:return C0}}class L0{constructor(t,e,i){this.id=t,this.addr=i,this.cache=[],this.type=e.type,this.setValue=u0(e.type)}}class D0{constructor(t,e,i){this.id=t,this.addr=i,this.cache=[],this.type=e.type,this.size=e.size,this.setValue=P0(e.type)}}class N0{constructor(t){this.id=t,this.seq=[],this.map={}}setValue(t,e,i){const s=this.seq;for(let r=0,a=s.length;r!==a;++r){const o=s[r];o.setValue(t,e[o.id],i)}}}const lo=/(\w+)(\])?(\[|\.)?/g;function bu(n,t){n.seq.push(t),n.map[t.id]=t}function I0(n,t,e){const i=n.name,s=i.length;for(lo.lastIndex=0;;){const r=lo.exec(i),a=lo.lastIndex;let o=r[1];const l=r[2]==="]",c=r[3];if(l&&(o=o|0),c===void 0||c==="["&&a+2===s){bu(e,c===void 0?new L0(o,n,t):new D0(o,n,t));break}else{let d=e.map[o];d===void 0&&(d=new N0(o),bu(e,d)),e=d}}}class aa{constructor(t,e){this.seq=[],this.map={};const i=t.getProgramParameter(e,t.ACTIVE_UNIFORMS);for(let a=0;a<i;++a){const o=t.getActiveUniform(e,a),l=t.getUniformLocation(e,o.name);I0(o,l,this)}const s=[],r=[];for(const a of this.seq)a.type===t.SAMPLER_2D_SHADOW||a.type===t.SAMPLER_CUBE_SHADOW||a.type===t.SAMPLER_2D_ARRAY_SHADOW?s.push(a):r.push(a);s.length>0&&(this.seq=s.concat(r))}setValue(t,e,i,s){const r=this.map[e];r!==void 0&&r.setValue(t,i,s)}setOptional(t,e,i){const s=e[i];s!==void 0&&this.setValue(t,i,s)}static upload(t,e,i,s){for(let r=0,a=e.length;r!==a;++r){const o=e[r],l=i[o.id];l.needsUpdate!==!1&&o.setValue(t,l.value,s)}}static seqWithValue(t,e){const i=[];for(let s=0,r=t.length;s!==r;++s){const a=t[s];a.id in e&&i.push(a)}return i}}function Tu(n,t,e){const i=n.createShader(t);return n.shaderSource(i,e),n.compileShader(i),i}const U0=37297;let F0=0;function O0(n,t){const e=n.split(`
`),i=[],s=Math.max(t-6,0),r=Math.min(t+6,e.length);for(let a=s;a<r;a++){const o=a+1;i.push(`${o===t?">":" "} ${o}: ${e[a]}`)}return i.join(`
`)}const wu=new Ft;function B0(n){qt._getMatrix(wu,qt.workingColorSpace,n);const t=`mat3( ${wu.elements.map(e=>e.toFixed(4))} )`;switch(qt.getTransfer(n)){case ma:return[t,"LinearTransferOETF"];case te:return[t,"sRGBTransferOETF"];default:return Lt("WebGLProgram: Unsupported color space: ",n),[t,"LinearTransferOETF"]}}function Au(n,t,e){const i=n.getShaderParameter(t,n.COMPILE_STATUS),r=(n.getShaderInfoLog(t)||"").trim();if(i&&r==="")return"";const a=/ERROR: 0:(\d+)/.exec(r);if(a){const o=parseInt(a[1]);return e.toUpperCase()+`

`+r+`

`+O0(n.getShaderSource(t),o)}else return r}function z0(n,t){const e=B0(t);return[`vec4 ${n}( vec4 value ) {`,`	return ${e[1]}( vec4( ${e[0]} * value.rgb, value.a ) );`,"}"].join(`
`)}const k0={[Dh]:"Linear",[Nh]:"Reinhard",[Ih]:"Cineon",[Uh]:"ACESFilmic",[Oh]:"AgX",[Bh]:"Neutral",[Fh]:"Custom"};function H0(n,t){const e=k0[t];return e===void 0?(Lt("WebGLProgram: Unsupported toneMapping:",t),"vec3 "+n+"( vec3 color ) { return LinearToneMapping( color ); }"):"vec3 "+n+"( vec3 color ) { return "+e+"ToneMapping( color ); }"}const Rr=new I;function G0(){qt.getLuminanceCoefficients(Rr);const n=Rr.x.toFixed(4),t=Rr.y.toFixed(4),e=Rr.z.toFixed(4);return["float luminance( const in vec3 rgb ) {",`	const vec3 weights = vec3( ${n}, ${t}, ${e} );`,"	return dot( weights, rgb );","}"].join(`
`)}function V0(n){return[n.extensionClipCullDistance?"#extension GL_ANGLE_clip_cull_distance : require":"",n.extensionMultiDraw?"#extension GL_ANGLE_multi_draw : require":""].filter(Fs).join(`
`)}function W0(n){const t=[];for(const e in n){const i=n[e];i!==!1&&t.push("#define "+e+" "+i)}return t.join(`
`)}function X0(n,t){const e={},i=n.getProgramParameter(t,n.ACTIVE_ATTRIBUTES);for(let s=0;s<i;s++){const r=n.getActiveAttrib(t,s),a=r.name;let o=1;r.type===n.FLOAT_MAT2&&(o=2),r.type===n.FLOAT_MAT3&&(o=3),r.type===n.FLOAT_MAT4&&(o=4),e[a]={type:r.type,location:n.getAttribLocation(t,a),locationSize:o}}return e}function Fs(n){return n!==""}function Ru(n,t){const e=t.numSpotLightShadows+t.numSpotLightMaps-t.numSpotLightShadowsWithMaps;return n.replace(/NUM_SUN_LIGHTS/g,t.numSunLights).replace(/NUM_DIR_LIGHTS/g,t.numDirLights).replace(/NUM_SPOT_LIGHTS/g,t.numSpotLights).replace(/NUM_SPOT_LIGHT_MAPS/g,t.numSpotLightMaps).replace(/NUM_SPOT_LIGHT_COORDS/g,e).replace(/NUM_RECT_AREA_LIGHTS/g,t.numRectAreaLights).replace(/NUM_POINT_LIGHTS/g,t.numPointLights).replace(/NUM_HEMI_LIGHTS/g,t.numHemiLights).replace(/NUM_SUN_LIGHT_SHADOWS/g,t.numSunLightShadows).replace(/NUM_DIR_LIGHT_SHADOWS/g,t.numDirLightShadows).replace(/NUM_SPOT_LIGHT_SHADOWS_WITH_MAPS/g,t.numSpotLightShadowsWithMaps).replace(/NUM_SPOT_LIGHT_SHADOWS/g,t.numSpotLightShadows).replace(/NUM_POINT_LIGHT_SHADOWS/g,t.numPointLightShadows).replace(/NUM_LIGHT_PROBE_GRIDS/g,t.numLightProbeGrids)}function Cu(n,t){return n.replace(/NUM_CLIPPING_PLANES/g,t.numClippingPlanes).replace(/UNION_CLIPPING_PLANES/g,t.numClippingPlanes-t.numClipIntersection)}const q0=/^[ \t]*#include +<([\w\d./]+)>/gm;function Sl(n){return n.replace(q0,$0)}function $0(n,t){const e=kt[t];if(e===void 0)throw new Error("THREE.WebGLProgram: Can not resolve #include <"+t+">");return Sl(e)}const Y0=/#pragma unroll_loop_start\s+for\s*\(\s*int\s+i\s*=\s*(\d+)\s*;\s*i\s*<\s*(\d+)\s*;\s*i\s*\+\+\s*\)\s*{([\s\S]+?)}\s+#pragma unroll_loop_end/g;function Pu(n){return n.replace(Y0,K0)}function K0(n,t,e,i){let s="";for(let r=parseInt(t);r<parseInt(e);r++)s+=i.replace(/\[\s*i\s*\]/g,"[ "+r+" ]").replace(/UNROLLED_LOOP_INDEX/g,r);return s}function Lu(n){let t=`precision ${n.precision} float;
	precision ${n.precision} int;
	precision ${n.precision} sampler2D;
	precision ${n.precision} samplerCube;
	precision ${n.precision} sampler3D;
	precision ${n.precision} sampler2DArray;
	precision ${n.precision} sampler2DShadow;
	precision ${n.precision} samplerCubeShadow;
	precision ${n.precision} sampler2DArrayShadow;
	precision ${n.precision} isampler2D;
	precision ${n.precision} isampler3D;
	precision ${n.precision} isamplerCube;
	precision ${n.precision} isampler2DArray;
	precision ${n.precision} usampler2D;
	precision ${n.precision} usampler3D;
	precision ${n.precision} usamplerCube;
	precision ${n.precision} usampler2DArray;
	`;return n.precision==="highp"?t+=`
#define HIGH_PRECISION`:n.precision==="mediump"?t+=`
#define MEDIUM_PRECISION`:n.precision==="lowp"&&(t+=`
#define LOW_PRECISION`),t}const Z0={[jr]:"SHADOWMAP_TYPE_PCF",[Us]:"SHADOWMAP_TYPE_VSM"};function J0(n){return Z0[n.shadowMapType]||"SHADOWMAP_TYPE_BASIC"}const Q0={[Ws]:"ENVMAP_MODE_REFRACTION"};function j0(n){return n.envMap===!1?"ENVMAP_MODE_REFLECTION":Q0[n.envMapMode]||"ENVMAP_MODE_REFLECTION"}const tx={[Ol]:"ENVMAP_BLENDING_MULTIPLY",[Uf]:"ENVMAP_BLENDING_MIX",[Ff]:"ENVMAP_BLENDING_ADD"};function ex(n){return n.envMap===!1?"ENVMAP_BLENDING_NONE":tx[n.combine]||"ENVMAP_BLENDING_NONE"}function nx(n,t,e,i){const s=n.getContext(),r=e.defines;let a=e.vertexShader,o=e.fragmentShader;const l=J0(e),c=e.envMapPMREM===!0?"ENVMAP_TYPE_PMREM":"ENVMAP_TYPE_CUBE",h=j0(e),d=ex(e),u=V0(e),f=W0(r),g=s.createProgram();let S,m,p=e.glslVersion?"#version "+e.glslVersion+`
`:"";e.isRawShaderMaterial?(S=["#define SHADER_TYPE "+e.shaderType,"#define SHADER_NAME "+e.shaderName,f].filter(Fs).join(`
`),S.length>0&&(S+=`
`),m=["#define SHADER_TYPE "+e.shaderType,"#define SHADER_NAME "+e.shaderName,f].filter(Fs).join(`
`),m.length>0&&(m+=`
`)):(S=[Lu(e),"#define SHADER_TYPE "+e.shaderType,"#define SHADER_NAME "+e.shaderName,f,e.extensionClipCullDistance?"#define USE_CLIP_DISTANCE":"",e.batching?"#define USE_BATCHING":"",e.batchingColor?"#define USE_BATCHING_COLOR":"",e.instancing?"#define USE_INSTANCING":"",e.instancingColor?"#define USE_INSTANCING_COLOR":"",e.instancingMorph?"#define USE_INSTANCING_MORPH":"",e.useFog&&e.fog?"#define USE_FOG":"",e.useFog&&e.fogExp2?"#define FOG_EXP2":"",e.map?"#define USE_MAP":"",e.envMap?"#define USE_ENVMAP":"",e.envMap?"#define "+h:"",e.lightMap?"#define USE_LIGHTMAP":"",e.aoMap?"#define USE_AOMAP":"",e.bumpMap?"#define USE_BUMPMAP":"",e.normalMap?"#define USE_NORMALMAP":"",e.normalMapObjectSpace?"#define USE_NORMALMAP_OBJECTSPACE":"",e.normalMapTangentSpace?"#define USE_NORMALMAP_TANGENTSPACE":"",e.displacementMap?"#define USE_DISPLACEMENTMAP":"",e.emissiveMap?"#define USE_EMISSIVEMAP":"",e.anisotropy?"#define USE_ANISOTROPY":"",e.anisotropyMap?"#define USE_ANISOTROPYMAP":"",e.clearcoatMap?"#define USE_CLEARCOATMAP":"",e.clearcoatRoughnessMap?"#define USE_CLEARCOAT_ROUGHNESSMAP":"",e.clearcoatNormalMap?"#define USE_CLEARCOAT_NORMALMAP":"",e.diffuseRoughnessMap?"#define USE_DIFFUSE_ROUGHNESSMAP":"",e.iridescenceMap?"#define USE_IRIDESCENCEMAP":"",e.iridescenceThicknessMap?"#define USE_IRIDESCENCE_THICKNESSMAP":"",e.specularMap?"#define USE_SPECULARMAP":"",e.specularColorMap?"#define USE_SPECULAR_COLORMAP":"",e.specularIntensityMap?"#define USE_SPECULAR_INTENSITYMAP":"",e.roughnessMap?"#define USE_ROUGHNESSMAP":"",e.metalnessMap?"#define USE_METALNESSMAP":"",e.alphaMap?"#define USE_ALPHAMAP":"",e.alphaHash?"#define USE_ALPHAHASH":"",e.transmission?"#define USE_TRANSMISSION":"",e.transmissionMap?"#define USE_TRANSMISSIONMAP":"",e.thicknessMap?"#define USE_THICKNESSMAP":"",e.sheenColorMap?"#define USE_SHEEN_COLORMAP":"",e.sheenRoughnessMap?"#define USE_SHEEN_ROUGHNESSMAP":"",e.mapUv?"#define MAP_UV "+e.mapUv:"",e.alphaMapUv?"#define ALPHAMAP_UV "+e.alphaMapUv:"",e.lightMapUv?"#define LIGHTMAP_UV "+e.lightMapUv:"",e.aoMapUv?"#define AOMAP_UV "+e.aoMapUv:"",e.emissiveMapUv?"#define EMISSIVEMAP_UV "+e.emissiveMapUv:"",e.bumpMapUv?"#define BUMPMAP_UV "+e.bumpMapUv:"",e.normalMapUv?"#define NORMALMAP_UV "+e.normalMapUv:"",e.displacementMapUv?"#define DISPLACEMENTMAP_UV "+e.displacementMapUv:"",e.metalnessMapUv?"#define METALNESSMAP_UV "+e.metalnessMapUv:"",e.roughnessMapUv?"#define ROUGHNESSMAP_UV "+e.roughnessMapUv:"",e.anisotropyMapUv?"#define ANISOTROPYMAP_UV "+e.anisotropyMapUv:"",e.clearcoatMapUv?"#define CLEARCOATMAP_UV "+e.clearcoatMapUv:"",e.clearcoatNormalMapUv?"#define CLEARCOAT_NORMALMAP_UV "+e.clearcoatNormalMapUv:"",e.clearcoatRoughnessMapUv?"#define CLEARCOAT_ROUGHNESSMAP_UV "+e.clearcoatRoughnessMapUv:"",e.diffuseRoughnessMapUv?"#define DIFFUSE_ROUGHNESSMAP_UV "+e.diffuseRoughnessMapUv:"",e.iridescenceMapUv?"#define IRIDESCENCEMAP_UV "+e.iridescenceMapUv:"",e.iridescenceThicknessMapUv?"#define IRIDESCENCE_THICKNESSMAP_UV "+e.iridescenceThicknessMapUv:"",e.sheenColorMapUv?"#define SHEEN_COLORMAP_UV "+e.sheenColorMapUv:"",e.sheenRoughnessMapUv?"#define SHEEN_ROUGHNESSMAP_UV "+e.sheenRoughnessMapUv:"",e.specularMapUv?"#define SPECULARMAP_UV "+e.specularMapUv:"",e.specularColorMapUv?"#define SPECULAR_COLORMAP_UV "+e.specularColorMapUv:"",e.specularIntensityMapUv?"#define SPECULAR_INTENSITYMAP_UV "+e.specularIntensityMapUv:"",e.transmissionMapUv?"#define TRANSMISSIONMAP_UV "+e.transmissionMapUv:"",e.thicknessMapUv?"#define THICKNESSMAP_UV "+e.thicknessMapUv:"",e.vertexTangents&&e.flatShading===!1?"#define USE_TANGENT":"",e.vertexNormals?"#define HAS_NORMAL":"",e.vertexColors?"#define USE_COLOR":"",e.vertexAlphas?"#define USE_COLOR_ALPHA":"",e.vertexUv1s?"#define USE_UV1":"",e.vertexUv2s?"#define USE_UV2":"",e.vertexUv3s?"#define USE_UV3":"",e.pointsUvs?"#define USE_POINTS_UV":"",e.flatShading?"#define FLAT_SHADED":"",e.skinning?"#define USE_SKINNING":"",e.morphTargets?"#define USE_MORPHTARGETS":"",e.morphNormals&&e.flatShading===!1?"#define USE_MORPHNORMALS":"",e.morphColors?"#define USE_MORPHCOLORS":"",e.morphTargetsCount>0?"#define MORPHTARGETS_TEXTURE_STRIDE "+e.morphTextureStride:"",e.morphTargetsCount>0?"#define MORPHTARGETS_COUNT "+e.morphTargetsCount:"",e.doubleSided?"#define DOUBLE_SIDED":"",e.flipSided?"#define FLIP_SIDED":"",e.shadowMapEnabled?"#define USE_SHADOWMAP":"",e.shadowMapEnabled?"#define "+l:"",e.sizeAttenuation?"#define USE_SIZEATTENUATION":"",e.numLightProbes>0?"#define USE_LIGHT_PROBES":"",e.logarithmicDepthBuffer?"#define USE_LOGARITHMIC_DEPTH_BUFFER":"",e.reversedDepthBuffer?"#define USE_REVERSED_DEPTH_BUFFER":"","uniform mat4 modelMatrix;","uniform mat4 modelViewMatrix;","uniform mat4 projectionMatrix;","uniform mat4 viewMatrix;","uniform mat3 normalMatrix;","uniform vec3 cameraPosition;","uniform bool isOrthographic;","#ifdef USE_INSTANCING","	attribute mat4 instanceMatrix;","#endif","#ifdef USE_INSTANCING_COLOR","	attribute vec3 instanceColor;","#endif","#ifdef USE_INSTANCING_MORPH","	uniform sampler2D morphTexture;","#endif","attribute vec3 position;","attribute vec3 normal;","attribute vec2 uv;","#ifdef USE_UV1","	attribute vec2 uv1;","#endif","#ifdef USE_UV2","	attribute vec2 uv2;","#endif","#ifdef USE_UV3","	attribute vec2 uv3;","#endif","#ifdef USE_TANGENT","	attribute vec4 tangent;","#endif","#if defined( USE_COLOR_ALPHA )","	attribute vec4 color;","#elif defined( USE_COLOR )","	attribute vec3 color;","#endif","#ifdef USE_SKINNING","	attribute vec4 skinIndex;","	attribute vec4 skinWeight;","#endif",`
`].filter(Fs).join(`
`),m=[Lu(e),"#define SHADER_TYPE "+e.shaderType,"#define SHADER_NAME "+e.shaderName,f,e.useFog&&e.fog?"#define USE_FOG":"",e.useFog&&e.fogExp2?"#define FOG_EXP2":"",e.alphaToCoverage?"#define ALPHA_TO_COVERAGE":"",e.map?"#define USE_MAP":"",e.matcap?"#define USE_MATCAP":"",e.envMap?"#define USE_ENVMAP":"",e.envMap?"#define "+c:"",e.envMap?"#define "+h:"",e.envMap?"#define "+d:"",e.envMapPMREM?"#define ENVMAP_MAX_LOD "+e.envMapMaxLod+".0":"",e.envMapPMREM?"#define ENVMAP_SIZE "+e.envMapSize+".0":"",e.lightMap?"#define USE_LIGHTMAP":"",e.aoMap?"#define USE_AOMAP":"",e.bumpMap?"#define USE_BUMPMAP":"",e.normalMap?"#define USE_NORMALMAP":"",e.normalMapObjectSpace?"#define USE_NORMALMAP_OBJECTSPACE":"",e.normalMapTangentSpace?"#define USE_NORMALMAP_TANGENTSPACE":"",e.packedNormalMap?"#define USE_PACKED_NORMALMAP":"",e.emissiveMap?"#define USE_EMISSIVEMAP":"",e.anisotropy?"#define USE_ANISOTROPY":"",e.anisotropyMap?"#define USE_ANISOTROPYMAP":"",e.clearcoat?"#define USE_CLEARCOAT":"",e.clearcoatMap?"#define USE_CLEARCOATMAP":"",e.clearcoatRoughnessMap?"#define USE_CLEARCOAT_ROUGHNESSMAP":"",e.clearcoatNormalMap?"#define USE_CLEARCOAT_NORMALMAP":"",e.diffuseRoughness?"#define USE_DIFFUSE_ROUGHNESS":"",e.diffuseRoughnessMap?"#define USE_DIFFUSE_ROUGHNESSMAP":"",e.dispersion?"#define USE_DISPERSION":"",e.retroreflection?"#define USE_RETROREFLECTION":"",e.iridescence?"#define USE_IRIDESCENCE":"",e.iridescenceMap?"#define USE_IRIDESCENCEMAP":"",e.iridescenceThicknessMap?"#define USE_IRIDESCENCE_THICKNESSMAP":"",e.specularMap?"#define USE_SPECULARMAP":"",e.specularColorMap?"#define USE_SPECULAR_COLORMAP":"",e.specularIntensityMap?"#define USE_SPECULAR_INTENSITYMAP":"",e.roughnessMap?"#define USE_ROUGHNESSMAP":"",e.metalnessMap?"#define USE_METALNESSMAP":"",e.alphaMap?"#define USE_ALPHAMAP":"",e.alphaTest?"#define USE_ALPHATEST":"",e.alphaHash?"#define USE_ALPHAHASH":"",e.sheen?"#define USE_SHEEN":"",e.sheenColorMap?"#define USE_SHEEN_COLORMAP":"",e.sheenRoughnessMap?"#define USE_SHEEN_ROUGHNESSMAP":"",e.transmission?"#define USE_TRANSMISSION":"",e.transmissionMap?"#define USE_TRANSMISSIONMAP":"",e.thicknessMap?"#define USE_THICKNESSMAP":"",e.vertexTangents&&e.flatShading===!1?"#define USE_TANGENT":"",e.vertexColors||e.instancingColor?"#define USE_COLOR":"",e.vertexAlphas||e.batchingColor?"#define USE_COLOR_ALPHA":"",e.vertexUv1s?"#define USE_UV1":"",e.vertexUv2s?"#define USE_UV2":"",e.vertexUv3s?"#define USE_UV3":"",e.pointsUvs?"#define USE_POINTS_UV":"",e.gradientMap?"#define USE_GRADIENTMAP":"",e.flatShading?"#define FLAT_SHADED":"",e.doubleSided?"#define DOUBLE_SIDED":"",e.flipSided?"#define FLIP_SIDED":"",e.shadowMapEnabled?"#define USE_SHADOWMAP":"",e.shadowMapEnabled?"#define "+l:"",e.premultipliedAlpha?"#define PREMULTIPLIED_ALPHA":"",e.numLightProbes>0?"#define USE_LIGHT_PROBES":"",e.decodeVideoTexture?"#define DECODE_VIDEO_TEXTURE":"",e.decodeVideoTextureEmissive?"#define DECODE_VIDEO_TEXTURE_EMISSIVE":"",e.logarithmicDepthBuffer?"#define USE_LOGARITHMIC_DEPTH_BUFFER":"",e.reversedDepthBuffer?"#define USE_REVERSED_DEPTH_BUFFER":"","uniform mat4 viewMatrix;","uniform vec3 cameraPosition;","uniform bool isOrthographic;",e.toneMapping!==ti?"#define TONE_MAPPING":"",e.toneMapping!==ti?kt.tonemapping_pars_fragment:"",e.toneMapping!==ti?H0("toneMapping",e.toneMapping):"",e.dithering?"#define DITHERING":"",e.opaque?"#define OPAQUE":"",kt.colorspace_pars_fragment,z0("linearToOutputTexel",e.outputColorSpace),G0(),e.useDepthPacking?"#define DEPTH_PACKING "+e.depthPacking:"",`
`].filter(Fs).join(`
`)),a=Sl(a),a=Ru(a,e),a=Cu(a,e),o=Sl(o),o=Ru(o,e),o=Cu(o,e),a=Pu(a),o=Pu(o),e.isRawShaderMaterial!==!0&&(p=`#version 300 es
`,S=[u,"#define attribute in","#define varying out","#define texture2D texture"].join(`
`)+`
`+S,m=["#define varying in",e.glslVersion===Oc?"":"layout(location = 0) out highp vec4 pc_fragColor;",e.glslVersion===Oc?"":"#define gl_FragColor pc_fragColor","#define gl_FragDepthEXT gl_FragDepth","#define texture2D texture","#define textureCube texture","#define texture2DProj textureProj","#define texture2DLodEXT textureLod","#define texture2DProjLodEXT textureProjLod","#define textureCubeLodEXT textureLod","#define texture2DGradEXT textureGrad","#define texture2DProjGradEXT textureProjGrad","#define textureCubeGradEXT textureGrad"].join(`
`)+`
`+m);const x=p+S+a,y=p+m+o,v=Tu(s,s.VERTEX_SHADER,x),M=Tu(s,s.FRAGMENT_SHADER,y);s.attachShader(g,v),s.attachShader(g,M),e.index0AttributeName!==void 0?s.bindAttribLocation(g,0,e.index0AttributeName):e.hasPositionAttribute===!0&&s.bindAttribLocation(g,0,"position"),s.linkProgram(g);function A(w){if(n.debug.checkShaderErrors){const P=s.getProgramInfoLog(g)||"",N=s.getShaderInfoLog(v)||"",F=s.getShaderInfoLog(M)||"",C=P.trim(),B=N.trim(),W=F.trim();let k=!0,et=!0;if(s.getProgramParameter(g,s.LINK_STATUS)===!1)if(k=!1,typeof n.debug.onShaderError=="function")n.debug.onShaderError(s,g,v,M);else{const q=Au(s,v,"vertex"),j=Au(s,M,"fragment");Zt("WebGLProgram: Shader Error "+s.getError()+" - VALIDATE_STATUS "+s.getProgramParameter(g,s.VALIDATE_STATUS)+`

Material Name: `+w.name+`
Material Type: `+w.type+`

Program Info Log: `+C+`
`+q+`
`+j)}else C!==""?Lt("WebGLProgram: Program Info Log:",C):(B===""||W==="")&&(et=!1);et&&(w.diagnostics={runnable:k,programLog:C,vertexShader:{log:B,prefix:S},fragmentShader:{log:W,prefix:m}})}s.deleteShader(v),s.deleteShader(M),_=new aa(s,g),E=X0(s,g)}let _;this.getUniforms=function(){return _===void 0&&A(this),_};let E;this.getAttributes=function(){return E===void 0&&A(this),E};let D=e.rendererExtensionParallelShaderCompile===!1;return this.isReady=function(){return D===!1&&(D=s.getProgramParameter(g,U0)),D},this.destroy=function(){i.releaseStatesOfProgram(this),s.deleteProgram(g),this.program=void 0},this.type=e.shaderType,this.name=e.shaderName,this.id=F0++,this.cacheKey=t,this.usedTimes=1,this.program=g,this.vertexShader=v,this.fragmentShader=M,this}let ix=0;class sx{constructor(){this.shaderCache=new Map,this.materialCache=new Map}update(t,e,i){const s=this._getShaderCacheForMaterial(t);return s.has(e)===!1&&(s.add(e),e.usedTimes++),s.has(i)===!1&&(s.add(i),i.usedTimes++),this}remove(t){const e=this.materialCache.get(t);for(const i of e)i.usedTimes--,i.usedTimes===0&&this.shaderCache.delete(i.code);return this.materialCache.delete(t),this}getVertexShaderStage(t){return this._getShaderStage(t.vertexShader)}getFragmentShaderStage(t){return this._getShaderStage(t.fragmentShader)}dispose(){this.shaderCache.clear(),this.materialCache.clear()}_getShaderCacheForMaterial(t){const e=this.materialCache;let i=e.get(t);return i===void 0&&(i=new Set,e.set(t,i)),i}_getShaderStage(t){const e=this.shaderCache;let i=e.get(t);return i===void 0&&(i=new rx(t),e.set(t,i)),i}}class rx{constructor(t){this.id=ix++,this.code=t,this.usedTimes=0}}function ax(n){return n===Oi||n===fa||n===pa}function ox(n,t,e,i,s,r){const a=new Xl,o=new sx,l=new Set,c=[],h=new Map,d=i.logarithmicDepthBuffer,u={MeshDepthMaterial:"depth",MeshDistanceMaterial:"distance",MeshNormalMaterial:"normal",MeshBasicMaterial:"basic",MeshLambertMaterial:"lambert",MeshPhongMaterial:"phong",MeshToonMaterial:"toon",MeshStandardMaterial:"physical",MeshPhysicalMaterial:"physical",MeshMatcapMaterial:"matcap",LineBasicMaterial:"basic",LineDashedMaterial:"dashed",PointsMaterial:"points",ShadowMaterial:"shadow",SpriteMaterial:"sprite"};function f(_){return l.add(_),_===0?"uv":`uv${_}`}function g(_,E,D,w,P,N){const F=w.fog,C=P.geometry,B=_.isMeshStandardMaterial||_.isMeshLambertMaterial||_.isMeshPhongMaterial?w.environment:null,W=_.isMeshStandardMaterial||_.isMeshLambertMaterial&&!_.envMap||_.isMeshPhongMaterial&&!_.envMap,k=t.get(_.envMap||B,W),et=u[_.type];let q=i.precision;_.precision!==null&&(q=i.getMaxPrecision(_.precision),q!==_.precision&&Lt("WebGLProgram.getParameters:",_.precision,"not supported, using",q,"instead."));const j=C.morphAttributes.position||C.morphAttributes.normal||C.morphAttributes.color,tt=j!==void 0?j.length:0;let St=0;C.morphAttributes.position!==void 0&&(St=1),C.morphAttributes.normal!==void 0&&(St=2),C.morphAttributes.color!==void 0&&(St=3);let Dt,Z,ht,vt;if(et){const _t=On[et];Dt=_t.vertexShader,Z=_t.fragmentShader}else{Dt=_.vertexShader,Z=_.fragmentShader;const _t=o.getVertexShaderStage(_),jt=o.getFragmentShaderStage(_);o.update(_,_t,jt),ht=_t.id,vt=jt.id}const At=n.getRenderTarget(),mt=n.state.buffers.depth.getReversed(),Nt=P.isInstancedMesh===!0,he=P.isBatchedMesh===!0,Ct=!!_.map,Yt=!!_.matcap,ne=!!k,Gt=ne&&k.isPMREMTexture===!0,Oe=!!_.aoMap,ye=!!_.lightMap,nn=!!_.bumpMap&&_.wireframe===!1,ce=!!_.normalMap,Dn=!!_.displacementMap,Ce=!!_.emissiveMap,dn=!!_.metalnessMap,fn=!!_.roughnessMap,pn=_.anisotropy>0,z=_.clearcoat>0,mn=_.diffuseRoughness>0,oe=_.dispersion>0,le=_.retroreflectivity>0,pt=_.iridescence>0,Ee=_.sheen>0,Pt=_.transmission>0,It=pn&&!!_.anisotropyMap,L=z&&!!_.clearcoatMap,T=z&&!!_.clearcoatNormalMap,G=z&&!!_.clearcoatRoughnessMap,nt=mn&&!!_.diffuseRoughnessMap,Q=pt&&!!_.iridescenceMap,at=pt&&!!_.iridescenceThicknessMap,dt=Ee&&!!_.sheenColorMap,Y=Ee&&!!_.sheenRoughnessMap,K=!!_.specularMap,lt=!!_.specularColorMap,U=!!_.specularIntensityMap,J=Pt&&!!_.transmissionMap,$=Pt&&!!_.thicknessMap,ct=!!_.gradientMap,rt=!!_.alphaMap,ot=_.alphaTest>0,Tt=!!_.alphaHash,zt=!!_.extensions;let it=ti;_.toneMapped&&(At===null||At.isXRRenderTarget===!0)&&(it=n.toneMapping);const wt=Gt?k.isCompressedCubeTexture?k.image[0].mipmaps:k.mipmaps:null,Bt={shaderID:et,shaderType:_.type,shaderName:_.name,vertexShader:Dt,fragmentShader:Z,defines:_.defines,customVertexShaderID:ht,customFragmentShaderID:vt,isRawShaderMaterial:_.isRawShaderMaterial===!0,glslVersion:_.glslVersion,precision:q,batching:he,batchingColor:he&&P._colorsTexture!==null,instancing:Nt,instancingColor:Nt&&P.instanceColor!==null,instancingMorph:Nt&&P.morphTexture!==null,outputColorSpace:At===null?n.outputColorSpace:At.isXRRenderTarget===!0?At.texture.colorSpace:qt.workingColorSpace,alphaToCoverage:!!_.alphaToCoverage,map:Ct,matcap:Yt,envMap:ne,envMapMode:ne&&k.mapping,envMapPMREM:Gt,envMapMaxLod:Gt?wt.length-1:null,envMapSize:Gt?wt[0].width:null,aoMap:Oe,lightMap:ye,bumpMap:nn,normalMap:ce,displacementMap:Dn,emissiveMap:Ce,normalMapObjectSpace:ce&&_.normalMapType===zf,normalMapTangentSpace:ce&&_.normalMapType===ml,packedNormalMap:ce&&_.normalMapType===ml&&ax(_.normalMap.format),metalnessMap:dn,roughnessMap:fn,anisotropy:pn,anisotropyMap:It,clearcoat:z,clearcoatMap:L,clearcoatNormalMap:T,clearcoatRoughnessMap:G,diffuseRoughness:mn,diffuseRoughnessMap:nt,dispersion:oe,retroreflection:le,iridescence:pt,iridescenceMap:Q,iridescenceThicknessMap:at,sheen:Ee,sheenColorMap:dt,sheenRoughnessMap:Y,specularMap:K,specularColorMap:lt,specularIntensityMap:U,transmission:Pt,transmissionMap:J,thicknessMap:$,gradientMap:ct,opaque:_.transparent===!1&&_.blending===Bs&&_.alphaToCoverage===!1,alphaMap:rt,alphaTest:ot,alphaHash:Tt,combine:_.combine,mapUv:Ct&&f(_.map.channel),aoMapUv:Oe&&f(_.aoMap.channel),lightMapUv:ye&&f(_.lightMap.channel),bumpMapUv:nn&&f(_.bumpMap.channel),normalMapUv:ce&&f(_.normalMap.channel),displacementMapUv:Dn&&f(_.displacementMap.channel),emissiveMapUv:Ce&&f(_.emissiveMap.channel),metalnessMapUv:dn&&f(_.metalnessMap.channel),roughnessMapUv:fn&&f(_.roughnessMap.channel),anisotropyMapUv:It&&f(_.anisotropyMap.channel),clearcoatMapUv:L&&f(_.clearcoatMap.channel),clearcoatNormalMapUv:T&&f(_.clearcoatNormalMap.channel),clearcoatRoughnessMapUv:G&&f(_.clearcoatRoughnessMap.channel),diffuseRoughnessMapUv:nt&&f(_.diffuseRoughnessMap.channel),iridescenceMapUv:Q&&f(_.iridescenceMap.channel),iridescenceThicknessMapUv:at&&f(_.iridescenceThicknessMap.channel),sheenColorMapUv:dt&&f(_.sheenColorMap.channel),sheenRoughnessMapUv:Y&&f(_.sheenRoughnessMap.channel),specularMapUv:K&&f(_.specularMap.channel),specularColorMapUv:lt&&f(_.specularColorMap.channel),specularIntensityMapUv:U&&f(_.specularIntensityMap.channel),transmissionMapUv:J&&f(_.transmissionMap.channel),thicknessMapUv:$&&f(_.thicknessMap.channel),alphaMapUv:rt&&f(_.alphaMap.channel),vertexTangents:!!C.attributes.tangent&&(ce||pn),vertexNormals:!!C.attributes.normal,vertexColors:_.vertexColors,vertexAlphas:_.vertexColors===!0&&!!C.attributes.color&&C.attributes.color.itemSize===4,pointsUvs:P.isPoints===!0&&!!C.attributes.uv&&(Ct||rt),fog:!!F,useFog:_.fog===!0,fogExp2:!!F&&F.isFogExp2,flatShading:_.wireframe===!1&&(_.flatShading===!0||C.attributes.normal===void 0&&ce===!1&&(_.isMeshLambertMaterial||_.isMeshPhongMaterial||_.isMeshStandardMaterial||_.isMeshPhysicalMaterial)),sizeAttenuation:_.sizeAttenuation===!0,logarithmicDepthBuffer:d,reversedDepthBuffer:mt,skinning:P.isSkinnedMesh===!0,hasPositionAttribute:C.attributes.position!==void 0,morphTargets:C.morphAttributes.position!==void 0,morphNormals:C.morphAttributes.normal!==void 0,morphColors:C.morphAttributes.color!==void 0,morphTargetsCount:tt,morphTextureStride:St,numSunLights:E.sun.length,numDirLights:E.directional.length,numPointLights:E.point.length,numSpotLights:E.spot.length,numSpotLightMaps:E.spotLightMap.length,numRectAreaLights:E.rectArea.length,numHemiLights:E.hemi.length,numSunLightShadows:E.sunShadowMap.length,numDirLightShadows:E.directionalShadowMap.length,numPointLightShadows:E.pointShadowMap.length,numSpotLightShadows:E.spotShadowMap.length,numSpotLightShadowsWithMaps:E.numSpotLightShadowsWithMaps,numLightProbes:E.numLightProbes,numLightProbeGrids:N.filter(_t=>_t.texture!==null).length,numClippingPlanes:r.numPlanes,numClipIntersection:r.numIntersection,dithering:_.dithering,shadowMapEnabled:n.shadowMap.enabled&&D.length>0,shadowMapType:n.shadowMap.type,toneMapping:it,decodeVideoTexture:Ct&&_.map.isVideoTexture===!0&&qt.getTransfer(_.map.colorSpace)===te,decodeVideoTextureEmissive:Ce&&_.emissiveMap.isVideoTexture===!0&&qt.getTransfer(_.emissiveMap.colorSpace)===te,premultipliedAlpha:_.premultipliedAlpha,doubleSided:_.side===rn,flipSided:_.side===Qe,useDepthPacking:_.depthPacking>=0,depthPacking:_.depthPacking||0,index0AttributeName:_.index0AttributeName,extensionClipCullDistance:zt&&_.extensions.clipCullDistance===!0&&e.has("WEBGL_clip_cull_distance"),extensionMultiDraw:(zt&&_.extensions.multiDraw===!0||he)&&e.has("WEBGL_multi_draw"),rendererExtensionParallelShaderCompile:e.has("KHR_parallel_shader_compile"),customProgramCacheKey:_.customProgramCacheKey()};return Bt.vertexUv1s=l.has(1),Bt.vertexUv2s=l.has(2),Bt.vertexUv3s=l.has(3),l.clear(),Bt}function S(_){const E=[];if(_.shaderID?E.push(_.shaderID):(E.push(_.customVertexShaderID),E.push(_.customFragmentShaderID)),_.defines!==void 0)for(const D in _.defines)E.push(D),E.push(_.defines[D]);return _.isRawShaderMaterial===!1&&(m(E,_),p(E,_),E.push(n.outputColorSpace)),E.push(_.customProgramCacheKey),E.join()}function m(_,E){_.push(E.precision),_.push(E.outputColorSpace),_.push(E.envMapMode),_.push(E.envMapPMREM),_.push(E.envMapMaxLod),_.push(E.envMapSize),_.push(E.mapUv),_.push(E.alphaMapUv),_.push(E.lightMapUv),_.push(E.aoMapUv),_.push(E.bumpMapUv),_.push(E.normalMapUv),_.push(E.displacementMapUv),_.push(E.emissiveMapUv),_.push(E.metalnessMapUv),_.push(E.roughnessMapUv),_.push(E.anisotropyMapUv),_.push(E.clearcoatMapUv),_.push(E.clearcoatNormalMapUv),_.push(E.clearcoatRoughnessMapUv),_.push(E.diffuseRoughnessMapUv),_.push(E.iridescenceMapUv),_.push(E.iridescenceThicknessMapUv),_.push(E.sheenColorMapUv),_.push(E.sheenRoughnessMapUv),_.push(E.specularMapUv),_.push(E.specularColorMapUv),_.push(E.specularIntensityMapUv),_.push(E.transmissionMapUv),_.push(E.thicknessMapUv),_.push(E.combine),_.push(E.fogExp2),_.push(E.sizeAttenuation),_.push(E.morphTargetsCount),_.push(E.numSunLights),_.push(E.numDirLights),_.push(E.numPointLights),_.push(E.numSpotLights),_.push(E.numSpotLightMaps),_.push(E.numHemiLights),_.push(E.numRectAreaLights),_.push(E.numSunLightShadows),_.push(E.numDirLightShadows),_.push(E.numPointLightShadows),_.push(E.numSpotLightShadows),_.push(E.numSpotLightShadowsWithMaps),_.push(E.numLightProbes),_.push(E.numLightProbeGrids),_.push(E.shadowMapType),_.push(E.toneMapping),_.push(E.numClippingPlanes),_.push(E.numClipIntersection),_.push(E.depthPacking)}function p(_,E){a.disableAll(),E.instancing&&a.enable(0),E.instancingColor&&a.enable(1),E.instancingMorph&&a.enable(2),E.matcap&&a.enable(3),E.envMap&&a.enable(4),E.normalMapObjectSpace&&a.enable(5),E.normalMapTangentSpace&&a.enable(6),E.clearcoat&&a.enable(7),E.iridescence&&a.enable(8),E.alphaTest&&a.enable(9),E.vertexColors&&a.enable(10),E.vertexAlphas&&a.enable(11),E.vertexUv1s&&a.enable(12),E.vertexUv2s&&a.enable(13),E.vertexUv3s&&a.enable(14),E.vertexTangents&&a.enable(15),E.anisotropy&&a.enable(16),E.alphaHash&&a.enable(17),E.batching&&a.enable(18),E.dispersion&&a.enable(19),E.retroreflection&&a.enable(24),E.diffuseRoughness&&a.enable(25),E.batchingColor&&a.enable(20),E.gradientMap&&a.enable(21),E.packedNormalMap&&a.enable(22),E.vertexNormals&&a.enable(23),_.push(a.mask),a.disableAll(),E.fog&&a.enable(0),E.useFog&&a.enable(1),E.flatShading&&a.enable(2),E.logarithmicDepthBuffer&&a.enable(3),E.reversedDepthBuffer&&a.enable(4),E.skinning&&a.enable(5),E.morphTargets&&a.enable(6),E.morphNormals&&a.enable(7),E.morphColors&&a.enable(8),E.premultipliedAlpha&&a.enable(9),E.shadowMapEnabled&&a.enable(10),E.doubleSided&&a.enable(11),E.flipSided&&a.enable(12),E.useDepthPacking&&a.enable(13),E.dithering&&a.enable(14),E.transmission&&a.enable(15),E.sheen&&a.enable(16),E.opaque&&a.enable(17),E.pointsUvs&&a.enable(18),E.decodeVideoTexture&&a.enable(19),E.decodeVideoTextureEmissive&&a.enable(20),E.alphaToCoverage&&a.enable(21),E.numLightProbeGrids>0&&a.enable(22),E.hasPositionAttribute&&a.enable(23),_.push(a.mask)}function x(_){const E=u[_.type];let D;if(E){const w=On[E];D=Tp.clone(w.uniforms)}else D=_.uniforms;return D}function y(_,E){let D=h.get(E);return D!==void 0?++D.usedTimes:(D=new nx(n,E,_,s),c.push(D),h.set(E,D)),D}function v(_){if(--_.usedTimes===0){const E=c.indexOf(_);c[E]=c[c.length-1],c.pop(),h.delete(_.cacheKey),_.destroy()}}function M(_){o.remove(_)}function A(){o.dispose()}return{getParameters:g,getProgramCacheKey:S,getUniforms:x,acquireProgram:y,releaseProgram:v,releaseShaderCache:M,programs:c,dispose:A}}function lx(){let n=new WeakMap;function t(a){return n.has(a)}function e(a){let o=n.get(a);return o===void 0&&(o={},n.set(a,o)),o}function i(a){n.delete(a)}function s(a,o,l){n.get(a)[o]=l}function r(){n=new WeakMap}return{has:t,get:e,remove:i,update:s,dispose:r}}function cx(n,t){return n.groupOrder!==t.groupOrder?n.groupOrder-t.groupOrder:n.renderOrder!==t.renderOrder?n.renderOrder-t.renderOrder:n.material.id!==t.material.id?n.material.id-t.material.id:n.materialVariant!==t.materialVariant?n.materialVariant-t.materialVariant:n.z!==t.z?n.z-t.z:n.id-t.id}function Du(n,t){return n.groupOrder!==t.groupOrder?n.groupOrder-t.groupOrder:n.renderOrder!==t.renderOrder?n.renderOrder-t.renderOrder:n.z!==t.z?t.z-n.z:n.id-t.id}function Nu(){const n=[];let t=0;const e=[],i=[],s=[];function r(){t=0,e.length=0,i.length=0,s.length=0}function a(u){let f=0;return u.isInstancedMesh&&(f+=2),u.isSkinnedMesh&&(f+=1),f}function o(u,f,g,S,m,p){let x=n[t];return x===void 0?(x={id:u.id,object:u,geometry:f,material:g,materialVariant:a(u),groupOrder:S,renderOrder:u.renderOrder,z:m,group:p},n[t]=x):(x.id=u.id,x.object=u,x.geometry=f,x.material=g,x.materialVariant=a(u),x.groupOrder=S,x.renderOrder=u.renderOrder,x.z=m,x.group=p),t++,x}function l(u,f,g,S,m,p,x){x.reversedDepth===!0&&(m=-m);const y=o(u,f,g,S,m,p);g.transmission>0?i.push(y):g.transparent===!0?s.push(y):e.push(y)}function c(u,f,g,S,m,p){const x=o(u,f,g,S,m,p);g.transmission>0?i.unshift(x):g.transparent===!0?s.unshift(x):e.unshift(x)}function h(u,f){e.length>1&&e.sort(u||cx),i.length>1&&i.sort(f||Du),s.length>1&&s.sort(f||Du)}function d(){for(let u=t,f=n.length;u<f;u++){const g=n[u];if(g.id===null)break;g.id=null,g.object=null,g.geometry=null,g.material=null,g.group=null}}return{opaque:e,transmissive:i,transparent:s,init:r,push:l,unshift:c,finish:d,sort:h}}function ux(){let n=new WeakMap;function t(i,s){const r=n.get(i);let a;return r===void 0?(a=new Nu,n.set(i,[a])):s>=r.length?(a=new Nu,r.push(a)):a=r[s],a}function e(){n=new WeakMap}return{get:t,dispose:e}}function hx(){const n={};return{get:function(t){if(n[t.id]!==void 0)return n[t.id];let e;switch(t.type){case"SunLight":case"DirectionalLight":e={direction:new I,color:new Xt};break;case"SpotLight":e={position:new I,direction:new I,color:new Xt,distance:0,coneCos:0,penumbraCos:0,decay:0};break;case"PointLight":e={position:new I,color:new Xt,distance:0,decay:0};break;case"HemisphereLight":e={direction:new I,skyColor:new Xt,groundColor:new Xt};break;case"RectAreaLight":e={color:new Xt,position:new I,halfWidth:new I,halfHeight:new I};break}return n[t.id]=e,e}}}function dx(){const n={};return{get:function(t){if(n[t.id]!==void 0)return n[t.id];let e;switch(t.type){case"SunLight":case"DirectionalLight":e={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new Rt};break;case"SpotLight":e={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new Rt};break;case"PointLight":e={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new Rt,shadowCameraNear:1,shadowCameraFar:1e3};break}return n[t.id]=e,e}}}let fx=0;function px(n,t){return(t.castShadow?2:0)-(n.castShadow?2:0)+(t.map?1:0)-(n.map?1:0)}function mx(n){const t=new hx,e=dx(),i={version:0,hash:{sunLength:-1,directionalLength:-1,pointLength:-1,spotLength:-1,rectAreaLength:-1,hemiLength:-1,numSunShadows:-1,numDirectionalShadows:-1,numPointShadows:-1,numSpotShadows:-1,numSpotMaps:-1,numLightProbes:-1},ambient:[0,0,0],probe:[],sun:[],sunShadow:[],sunShadowMap:[],sunShadowMatrix:[],sunShadowCascade:[],directional:[],directionalShadow:[],directionalShadowMap:[],directionalShadowMatrix:[],spot:[],spotLightMap:[],spotShadow:[],spotShadowMap:[],spotLightMatrix:[],rectArea:[],rectAreaLTC1:null,rectAreaLTC2:null,point:[],pointShadow:[],pointShadowMap:[],pointShadowMatrix:[],hemi:[],numSpotLightShadowsWithMaps:0,numLightProbes:0};for(let c=0;c<9;c++)i.probe.push(new I);const s=new I,r=new $t,a=new $t;function o(c){let h=0,d=0,u=0;for(let N=0;N<9;N++)i.probe[N].set(0,0,0);let f=0,g=0,S=0,m=0,p=0,x=0,y=0,v=0,M=0,A=0,_=0,E=0,D=0,w=0;c.sort(px);for(let N=0,F=c.length;N<F;N++){const C=c[N],B=C.color,W=C.intensity,k=C.distance;let et=null;if(C.shadow&&C.shadow.map&&(C.shadow.map.texture.format===Oi?et=C.shadow.map.texture:et=C.shadow.map.depthTexture||C.shadow.map.texture),C.isAmbientLight)h+=B.r*W,d+=B.g*W,u+=B.b*W;else if(C.isLightProbe){for(let q=0;q<9;q++)i.probe[q].addScaledVector(C.sh.coefficients[q],W);w++}else if(C.isSunLight){const q=t.get(C);if(q.color.copy(C.color).multiplyScalar(C.intensity),C.castShadow){const j=C.shadow,tt=e.get(C);tt.shadowIntensity=j.intensity,tt.shadowBias=j.bias,tt.shadowNormalBias=j.normalBias,tt.shadowRadius=j.radius,tt.shadowMapSize.copy(j.mapSize).multiply(j.getFrameExtents()),i.sunShadow[g]=tt,i.sunShadowMap[g]=et;const St=j.getViewportCount();for(let Dt=0;Dt<St;Dt++)i.sunShadowMatrix[S+Dt]=j.getMatrix(Dt),i.sunShadowCascade[S+Dt]=j._cascadeData[Dt];S+=St,g++}i.sun[f]=q,f++}else if(C.isDirectionalLight){const q=t.get(C);if(q.color.copy(C.color).multiplyScalar(C.intensity),C.castShadow){const j=C.shadow,tt=e.get(C);tt.shadowIntensity=j.intensity,tt.shadowBias=j.bias,tt.shadowNormalBias=j.normalBias,tt.shadowRadius=j.radius,tt.shadowMapSize=j.mapSize,i.directionalShadow[m]=tt,i.directionalShadowMap[m]=et,i.directionalShadowMatrix[m]=C.shadow.matrix,M++}i.directional[m]=q,m++}else if(C.isSpotLight){const q=t.get(C);q.position.setFromMatrixPosition(C.matrixWorld),q.color.copy(B).multiplyScalar(W),q.distance=k,q.coneCos=Math.cos(C.angle),q.penumbraCos=Math.cos(C.angle*(1-C.penumbra)),q.decay=C.decay,i.spot[x]=q;const j=C.shadow;if(C.map&&(i.spotLightMap[E]=C.map,E++,j.updateMatrices(C),C.castShadow&&D++),i.spotLightMatrix[x]=j.matrix,C.castShadow){const tt=e.get(C);tt.shadowIntensity=j.intensity,tt.shadowBias=j.bias,tt.shadowNormalBias=j.normalBias,tt.shadowRadius=j.radius,tt.shadowMapSize=j.mapSize,i.spotShadow[x]=tt,i.spotShadowMap[x]=et,_++}x++}else if(C.isRectAreaLight){const q=t.get(C);q.color.copy(B).multiplyScalar(W),q.halfWidth.set(C.width*.5,0,0),q.halfHeight.set(0,C.height*.5,0),i.rectArea[y]=q,y++}else if(C.isPointLight){const q=t.get(C);if(q.color.copy(C.color).multiplyScalar(C.intensity),q.distance=C.distance,q.decay=C.decay,C.castShadow){const j=C.shadow,tt=e.get(C);tt.shadowIntensity=j.intensity,tt.shadowBias=j.bias,tt.shadowNormalBias=j.normalBias,tt.shadowRadius=j.radius,tt.shadowMapSize=j.mapSize,tt.shadowCameraNear=j.camera.near,tt.shadowCameraFar=j.camera.far,i.pointShadow[p]=tt,i.pointShadowMap[p]=et,i.pointShadowMatrix[p]=C.shadow.matrix,A++}i.point[p]=q,p++}else if(C.isHemisphereLight){const q=t.get(C);q.skyColor.copy(C.color).multiplyScalar(W),q.groundColor.copy(C.groundColor).multiplyScalar(W),i.hemi[v]=q,v++}}y>0&&(n.has("OES_texture_float_linear")===!0?(i.rectAreaLTC1=gt.LTC_FLOAT_1,i.rectAreaLTC2=gt.LTC_FLOAT_2):(i.rectAreaLTC1=gt.LTC_HALF_1,i.rectAreaLTC2=gt.LTC_HALF_2)),i.ambient[0]=h,i.ambient[1]=d,i.ambient[2]=u;const P=i.hash;(P.sunLength!==f||P.directionalLength!==m||P.pointLength!==p||P.spotLength!==x||P.rectAreaLength!==y||P.hemiLength!==v||P.numSunShadows!==g||P.numDirectionalShadows!==M||P.numPointShadows!==A||P.numSpotShadows!==_||P.numSpotMaps!==E||P.numLightProbes!==w)&&(i.sun.length=f,i.directional.length=m,i.spot.length=x,i.rectArea.length=y,i.point.length=p,i.hemi.length=v,i.sunShadow.length=g,i.sunShadowMap.length=g,i.sunShadowMatrix.length=S,i.sunShadowCascade.length=S,i.directionalShadow.length=M,i.directionalShadowMap.length=M,i.directionalShadowMatrix.length=M,i.pointShadow.length=A,i.pointShadowMap.length=A,i.pointShadowMatrix.length=A,i.spotShadow.length=_,i.spotShadowMap.length=_,i.spotLightMatrix.length=_+E-D,i.spotLightMap.length=E,i.numSpotLightShadowsWithMaps=D,i.numLightProbes=w,P.sunLength=f,P.directionalLength=m,P.pointLength=p,P.spotLength=x,P.rectAreaLength=y,P.hemiLength=v,P.numSunShadows=g,P.numDirectionalShadows=M,P.numPointShadows=A,P.numSpotShadows=_,P.numSpotMaps=E,P.numLightProbes=w,i.version=fx++)}function l(c,h){let d=0,u=0,f=0,g=0,S=0,m=0;const p=h.matrixWorldInverse;for(let x=0,y=c.length;x<y;x++){const v=c[x];if(v.isSunLight){const M=i.sun[d];M.direction.setFromMatrixPosition(v.matrixWorld),M.direction.transformDirection(p),d++}else if(v.isDirectionalLight){const M=i.directional[u];M.direction.setFromMatrixPosition(v.matrixWorld),s.setFromMatrixPosition(v.target.matrixWorld),M.direction.sub(s),M.direction.transformDirection(p),u++}else if(v.isSpotLight){const M=i.spot[g];M.position.setFromMatrixPosition(v.matrixWorld),M.position.applyMatrix4(p),M.direction.setFromMatrixPosition(v.matrixWorld),s.setFromMatrixPosition(v.target.matrixWorld),M.direction.sub(s),M.direction.transformDirection(p),g++}else if(v.isRectAreaLight){const M=i.rectArea[S];M.position.setFromMatrixPosition(v.matrixWorld),M.position.applyMatrix4(p),a.identity(),r.copy(v.matrixWorld),r.premultiply(p),a.extractRotation(r),M.halfWidth.set(v.width*.5,0,0),M.halfHeight.set(0,v.height*.5,0),M.halfWidth.applyMatrix4(a),M.halfHeight.applyMatrix4(a),S++}else if(v.isPointLight){const M=i.point[f];M.position.setFromMatrixPosition(v.matrixWorld),M.position.applyMatrix4(p),f++}else if(v.isHemisphereLight){const M=i.hemi[m];M.direction.setFromMatrixPosition(v.matrixWorld),M.direction.transformDirection(p),m++}}}return{setup:o,setupView:l,state:i}}function Iu(n){const t=new mx(n),e=[],i=[],s=[];function r(d){h.camera=d,e.length=0,i.length=0,s.length=0}function a(d){d.isLightProbeGrid?s.push(d):e.push(d)}function o(d){i.push(d)}function l(){t.setup(e),s.sort((d,u)=>d.priority-u.priority||d.id-u.id)}function c(d){t.setupView(e,d)}const h={lightsArray:e,shadowsArray:i,lightProbeGridArray:s,camera:null,lights:t,transmissionRenderTarget:{},textureUnits:0};return{init:r,state:h,setupLights:l,setupLightsView:c,pushLight:a,pushShadow:o}}function _x(n){let t=new WeakMap;function e(s,r=0){const a=t.get(s);let o;return a===void 0?(o=new Iu(n),t.set(s,[o])):r>=a.length?(o=new Iu(n),a.push(o)):o=a[r],o}function i(){t=new WeakMap}return{get:e,dispose:i}}const gx=`void main() {
	gl_Position = vec4( position, 1.0 );
}`,xx=`uniform sampler2D shadow_pass;
uniform vec2 resolution;
uniform float radius;
void main() {
	const float samples = float( VSM_SAMPLES );
	float mean = 0.0;
	float squared_mean = 0.0;
	float uvStride = samples <= 1.0 ? 0.0 : 2.0 / ( samples - 1.0 );
	float uvStart = samples <= 1.0 ? 0.0 : - 1.0;
	for ( float i = 0.0; i < samples; i ++ ) {
		float uvOffset = uvStart + i * uvStride;
		#ifdef HORIZONTAL_PASS
			vec2 distribution = texture2D( shadow_pass, ( gl_FragCoord.xy + vec2( uvOffset, 0.0 ) * radius ) / resolution ).rg;
			mean += distribution.x;
			squared_mean += distribution.y * distribution.y + distribution.x * distribution.x;
		#else
			float depth = texture2D( shadow_pass, ( gl_FragCoord.xy + vec2( 0.0, uvOffset ) * radius ) / resolution ).r;
			mean += depth;
			squared_mean += depth * depth;
		#endif
	}
	mean = mean / samples;
	squared_mean = squared_mean / samples;
	float std_dev = sqrt( max( 0.0, squared_mean - mean * mean ) );
	gl_FragColor = vec4( mean, std_dev, 0.0, 1.0 );
}`,vx=[new I(1,0,0),new I(-1,0,0),new I(0,1,0),new I(0,-1,0),new I(0,0,1),new I(0,0,-1)],Sx=[new I(0,-1,0),new I(0,-1,0),new I(0,0,1),new I(0,0,-1),new I(0,-1,0),new I(0,-1,0)],Uu=new $t,Rs=new I,co=new I;function Mx(n,t,e){let i=new $s;const s=new Rt,r=new Rt,a=new fe,o=new Pp,l=new Lp,c={},h=e.maxTextureSize,d={[ni]:Qe,[Qe]:ni,[rn]:rn},u=new ii({defines:{VSM_SAMPLES:8},uniforms:{shadow_pass:{value:null},resolution:{value:new Rt},radius:{value:4}},vertexShader:gx,fragmentShader:xx}),f=u.clone();f.defines.HORIZONTAL_PASS=1;const g=new hn;g.setAttribute("position",new Ue(new Float32Array([-1,-1,.5,3,-1,.5,-1,3,.5]),3));const S=new Sn(g,u),m=this;this.enabled=!1,this.autoUpdate=!0,this.needsUpdate=!1,this.type=jr;let p=this.type;this.render=function(A,_,E){if(m.enabled===!1||m.autoUpdate===!1&&m.needsUpdate===!1||A.length===0)return;this.type===_f&&(Lt("WebGLShadowMap: PCFSoftShadowMap has been removed. Using PCFShadowMap instead."),this.type=jr);const D=n.getRenderTarget(),w=n.getActiveCubeFace(),P=n.getActiveMipmapLevel(),N=n.state;N.setBlending(ps),N.buffers.depth.getReversed()===!0?N.buffers.color.setClear(0,0,0,0):N.buffers.color.setClear(1,1,1,1),N.buffers.depth.setTest(!0),N.setScissorTest(!1);const F=p!==this.type;F&&_.traverse(function(C){C.material&&(Array.isArray(C.material)?C.material.forEach(B=>B.needsUpdate=!0):C.material.needsUpdate=!0)});for(let C=0,B=A.length;C<B;C++){const W=A[C],k=W.shadow;if(k===void 0){Lt("WebGLShadowMap:",W,"has no shadow.");continue}if(k.autoUpdate===!1&&k.needsUpdate===!1)continue;s.copy(k.mapSize);const et=k.getFrameExtents();s.multiply(et),r.copy(k.mapSize),(s.x>h||s.y>h)&&(s.x>h&&(r.x=Math.floor(h/et.x),s.x=r.x*et.x,k.mapSize.x=r.x),s.y>h&&(r.y=Math.floor(h/et.y),s.y=r.y*et.y,k.mapSize.y=r.y));const q=n.state.buffers.depth.getReversed();if(k.camera._reversedDepth=q,k.map===null||F===!0){if(k.map!==null&&(k.map.depthTexture!==null&&(k.map.depthTexture.dispose(),k.map.depthTexture=null),k.map.dispose()),this.type===Us){if(W.isPointLight){Lt("WebGLShadowMap: VSM shadow maps are not supported for PointLights. Use PCF or BasicShadowMap instead.");continue}k.map=new kn(s.x,s.y,{format:Oi,type:Gn,minFilter:$e,magFilter:$e,generateMipmaps:!1}),k.map.texture.name=W.name+".shadowMap",k.map.depthTexture=new xs(s.x,s.y,Bn),k.map.depthTexture.name=W.name+".shadowMapDepth",k.map.depthTexture.format=Si,k.map.depthTexture.compareFunction=null,k.map.depthTexture.minFilter=ke,k.map.depthTexture.magFilter=ke}else W.isPointLight?(k.map=new Zl(s.x),k.map.depthTexture=new od(s.x,Hn)):(k.map=new kn(s.x,s.y),k.map.depthTexture=new xs(s.x,s.y,Hn)),k.map.depthTexture.name=W.name+".shadowMap",k.map.depthTexture.format=Si,this.type===jr?(k.map.depthTexture.compareFunction=q?Yh:$h,k.map.depthTexture.minFilter=$e,k.map.depthTexture.magFilter=$e):(k.map.depthTexture.compareFunction=null,k.map.depthTexture.minFilter=ke,k.map.depthTexture.magFilter=ke);k.camera.updateProjectionMatrix()}k.map.isWebGLCubeRenderTarget!==!0&&(k.map.width!==s.x||k.map.height!==s.y)&&k.map.setSize(s.x,s.y);const j=k.map.isWebGLCubeRenderTarget?6:k.getViewportCount();W.isPointLight!==!0&&k.updateMatrices(W,E);const tt=(k.camera.layers.mask&4294967294)!==0?k.camera.layers:E.layers;for(let St=0;St<j;St++){const Dt=k.getCamera(St);if(W.isPointLight){const Z=k.camera,ht=k.matrix,vt=W.distance||Z.far;vt!==Z.far&&(Z.far=vt,Z.updateProjectionMatrix()),Rs.setFromMatrixPosition(W.matrixWorld),Z.position.copy(Rs),co.copy(Z.position),co.add(vx[St]),Z.up.copy(Sx[St]),Z.lookAt(co),Z.updateMatrixWorld(),ht.makeTranslation(-Rs.x,-Rs.y,-Rs.z),Uu.multiplyMatrices(Z.projectionMatrix,Z.matrixWorldInverse),k._frustum.setFromProjectionMatrix(Uu,Z.coordinateSystem,Z.reversedDepth)}if(k.map.isWebGLCubeRenderTarget)n.setRenderTarget(k.map,St),n.clear();else{St===0&&(n.setRenderTarget(k.map),n.clear());const Z=k.getViewport(St);a.set(r.x*Z.x,r.y*Z.y,r.x*Z.z,r.y*Z.w),N.viewport(a)}i=k.getFrustum(St),v(_,E,Dt,W,tt,this.type)}k.isPointLightShadow!==!0&&this.type===Us&&x(k,E),k.needsUpdate=!1}p=this.type,m.needsUpdate=!1,n.setRenderTarget(D,w,P)};function x(A,_){const E=t.update(S);u.defines.VSM_SAMPLES!==A.blurSamples&&(u.defines.VSM_SAMPLES=A.blurSamples,f.defines.VSM_SAMPLES=A.blurSamples,u.needsUpdate=!0,f.needsUpdate=!0),A.mapPass===null?A.mapPass=new kn(s.x,s.y,{format:Oi,type:Gn}):(A.mapPass.width!==A.map.width||A.mapPass.height!==A.map.height)&&A.mapPass.setSize(A.map.width,A.map.height),u.uniforms.shadow_pass.value=A.map.depthTexture,u.uniforms.resolution.value.set(A.map.width,A.map.height),u.uniforms.radius.value=A.radius,n.setRenderTarget(A.mapPass),n.clear(),n.renderBufferDirect(_,null,E,u,S,null),f.uniforms.shadow_pass.value=A.mapPass.texture,f.uniforms.resolution.value.set(A.map.width,A.map.height),f.uniforms.radius.value=A.radius,n.setRenderTarget(A.map),n.clear(),n.renderBufferDirect(_,null,E,f,S,null)}function y(A,_,E,D){let w=null;const P=E.isPointLight===!0?A.customDistanceMaterial:A.customDepthMaterial;if(P!==void 0)w=P;else if(w=E.isPointLight===!0?l:o,n.localClippingEnabled&&_.clipShadows===!0&&Array.isArray(_.clippingPlanes)&&_.clippingPlanes.length!==0||_.displacementMap&&_.displacementScale!==0||_.alphaMap&&_.alphaTest>0||_.map&&_.alphaTest>0||_.alphaToCoverage===!0){const N=w.uuid,F=_.uuid;let C=c[N];C===void 0&&(C={},c[N]=C);let B=C[F];B===void 0&&(B=w.clone(),C[F]=B,_.addEventListener("dispose",M)),w=B}if(w.visible=_.visible,w.wireframe=_.wireframe,D===Us?w.side=_.shadowSide!==null?_.shadowSide:_.side:w.side=_.shadowSide!==null?_.shadowSide:d[_.side],w.alphaMap=_.alphaMap,w.alphaTest=_.alphaToCoverage===!0?.5:_.alphaTest,w.map=_.map,w.clipShadows=_.clipShadows,w.clippingPlanes=_.clippingPlanes,w.clipIntersection=_.clipIntersection,w.displacementMap=_.displacementMap,w.displacementScale=_.displacementScale,w.displacementBias=_.displacementBias,w.wireframeLinewidth=_.wireframeLinewidth,w.linewidth=_.linewidth,E.isPointLight===!0&&w.isMeshDistanceMaterial===!0){const N=n.properties.get(w);N.light=E}return w}function v(A,_,E,D,w,P){if(A.visible===!1)return;if(A.layers.test(w)&&(A.isMesh||A.isLine||A.isPoints)&&(A.castShadow||A.receiveShadow&&P===Us)&&(!A.frustumCulled||A.intersectsFrustum(i))){A.modelViewMatrix.multiplyMatrices(E.matrixWorldInverse,A.matrixWorld);const C=t.update(A),B=A.material;if(Array.isArray(B)){const W=C.groups;for(let k=0,et=W.length;k<et;k++){const q=W[k],j=B[q.materialIndex];if(j&&j.visible){const tt=y(A,j,D,P);A.onBeforeShadow(n,A,_,E,C,tt,q),n.renderBufferDirect(E,null,C,tt,A,q),A.onAfterShadow(n,A,_,E,C,tt,q)}}}else if(B.visible){const W=y(A,B,D,P);A.onBeforeShadow(n,A,_,E,C,W,null),n.renderBufferDirect(E,null,C,W,A,null),A.onAfterShadow(n,A,_,E,C,W,null)}}const F=A.children;for(let C=0,B=F.length;C<B;C++)v(F[C],_,E,D,w,P)}function M(A){A.target.removeEventListener("dispose",M);for(const E in c){const D=c[E],w=A.target.uuid;w in D&&(D[w].dispose(),delete D[w])}}}function yx(n,t){function e(){let U=!1;const J=new fe;let $=null;const ct=new fe(0,0,0,0);return{setMask:function(rt){$!==rt&&!U&&(n.colorMask(rt,rt,rt,rt),$=rt)},setLocked:function(rt){U=rt},setClear:function(rt,ot,Tt,zt,it){it===!0&&(rt*=zt,ot*=zt,Tt*=zt),J.set(rt,ot,Tt,zt),ct.equals(J)===!1&&(n.clearColor(rt,ot,Tt,zt),ct.copy(J))},reset:function(){U=!1,$=null,ct.set(-1,0,0,0)}}}function i(){let U=!1,J=!1,$=null,ct=null,rt=null;return{setReversed:function(ot){if(J!==ot){const Tt=t.get("EXT_clip_control");ot?Tt.clipControlEXT(Tt.LOWER_LEFT_EXT,Tt.ZERO_TO_ONE_EXT):Tt.clipControlEXT(Tt.LOWER_LEFT_EXT,Tt.NEGATIVE_ONE_TO_ONE_EXT),J=ot;const zt=rt;rt=null,this.setClear(zt)}},getReversed:function(){return J},setTest:function(ot){ot?mt(n.DEPTH_TEST):Nt(n.DEPTH_TEST)},setMask:function(ot){$!==ot&&!U&&(n.depthMask(ot),$=ot)},setFunc:function(ot){if(J&&(ot=Kf[ot]),ct!==ot){switch(ot){case Po:n.depthFunc(n.NEVER);break;case Lo:n.depthFunc(n.ALWAYS);break;case Do:n.depthFunc(n.LESS);break;case Vs:n.depthFunc(n.LEQUAL);break;case No:n.depthFunc(n.EQUAL);break;case Io:n.depthFunc(n.GEQUAL);break;case Uo:n.depthFunc(n.GREATER);break;case Fo:n.depthFunc(n.NOTEQUAL);break;default:n.depthFunc(n.LEQUAL)}ct=ot}},setLocked:function(ot){U=ot},setClear:function(ot){rt!==ot&&(rt=ot,J&&(ot=1-ot),n.clearDepth(ot))},reset:function(){U=!1,$=null,ct=null,rt=null,J=!1}}}function s(){let U=!1,J=null,$=null,ct=null,rt=null,ot=null,Tt=null,zt=null,it=null;return{setTest:function(wt){U||(wt?mt(n.STENCIL_TEST):Nt(n.STENCIL_TEST))},setMask:function(wt){J!==wt&&!U&&(n.stencilMask(wt),J=wt)},setFunc:function(wt,Bt,_t){($!==wt||ct!==Bt||rt!==_t)&&(n.stencilFunc(wt,Bt,_t),$=wt,ct=Bt,rt=_t)},setOp:function(wt,Bt,_t){(ot!==wt||Tt!==Bt||zt!==_t)&&(n.stencilOp(wt,Bt,_t),ot=wt,Tt=Bt,zt=_t)},setLocked:function(wt){U=wt},setClear:function(wt){it!==wt&&(n.clearStencil(wt),it=wt)},reset:function(){U=!1,J=null,$=null,ct=null,rt=null,ot=null,Tt=null,zt=null,it=null}}}const r=new e,a=new i,o=new s;let l={};const c=new WeakMap;let h={},d={},u={},f=new WeakMap,g=[],S=null,m=!1,p=null,x=null,y=null,v=null,M=null,A=null,_=null,E=new Xt(0,0,0),D=0,w=!1,P=null,N=null,F=null,C=null,B=null;const W=n.getParameter(n.MAX_COMBINED_TEXTURE_IMAGE_UNITS);let k=!1,et=0;const q=n.getParameter(n.VERSION);q.indexOf("WebGL")!==-1?(et=parseFloat(/^WebGL (\d)/.exec(q)[1]),k=et>=1):q.indexOf("OpenGL ES")!==-1&&(et=parseFloat(/^OpenGL ES (\d)/.exec(q)[1]),k=et>=2);let j=null,tt={};const St=n.getParameter(n.SCISSOR_BOX),Dt=n.getParameter(n.VIEWPORT),Z=new fe().fromArray(St),ht=new fe().fromArray(Dt);function vt(U,J,$,ct){const rt=new Uint8Array(4),ot=n.createTexture();n.bindTexture(U,ot),n.texParameteri(U,n.TEXTURE_MIN_FILTER,n.NEAREST),n.texParameteri(U,n.TEXTURE_MAG_FILTER,n.NEAREST);for(let Tt=0;Tt<$;Tt++)U===n.TEXTURE_3D||U===n.TEXTURE_2D_ARRAY?n.texImage3D(J,0,n.RGBA,1,1,ct,0,n.RGBA,n.UNSIGNED_BYTE,rt):n.texImage2D(J+Tt,0,n.RGBA,1,1,0,n.RGBA,n.UNSIGNED_BYTE,rt);return ot}const At={};At[n.TEXTURE_2D]=vt(n.TEXTURE_2D,n.TEXTURE_2D,1),At[n.TEXTURE_CUBE_MAP]=vt(n.TEXTURE_CUBE_MAP,n.TEXTURE_CUBE_MAP_POSITIVE_X,6),At[n.TEXTURE_2D_ARRAY]=vt(n.TEXTURE_2D_ARRAY,n.TEXTURE_2D_ARRAY,1,1),At[n.TEXTURE_3D]=vt(n.TEXTURE_3D,n.TEXTURE_3D,1,1),r.setClear(0,0,0,1),a.setClear(1),o.setClear(0),mt(n.DEPTH_TEST),a.setFunc(Vs),nn(!1),ce(Nc),mt(n.CULL_FACE),Oe(ps);function mt(U){h[U]!==!0&&(n.enable(U),h[U]=!0)}function Nt(U){h[U]!==!1&&(n.disable(U),h[U]=!1)}function he(U,J){return u[U]!==J?(n.bindFramebuffer(U,J),u[U]=J,U===n.DRAW_FRAMEBUFFER&&(u[n.FRAMEBUFFER]=J),U===n.FRAMEBUFFER&&(u[n.DRAW_FRAMEBUFFER]=J),!0):!1}function Ct(U,J){let $=g,ct=!1;if(U){$=f.get(J),$===void 0&&($=[],f.set(J,$));const rt=U.textures;if($.length!==rt.length||$[0]!==n.COLOR_ATTACHMENT0){for(let ot=0,Tt=rt.length;ot<Tt;ot++)$[ot]=n.COLOR_ATTACHMENT0+ot;$.length=rt.length,ct=!0}}else $[0]!==n.BACK&&($[0]=n.BACK,ct=!0);ct&&n.drawBuffers($)}function Yt(U){return S!==U?(n.useProgram(U),S=U,!0):!1}const ne={[cs]:n.FUNC_ADD,[xf]:n.FUNC_SUBTRACT,[vf]:n.FUNC_REVERSE_SUBTRACT};ne[Sf]=n.MIN,ne[Mf]=n.MAX;const Gt={[yf]:n.ZERO,[Ef]:n.ONE,[bf]:n.SRC_COLOR,[Ph]:n.SRC_ALPHA,[Pf]:n.SRC_ALPHA_SATURATE,[Rf]:n.DST_COLOR,[wf]:n.DST_ALPHA,[Tf]:n.ONE_MINUS_SRC_COLOR,[Lh]:n.ONE_MINUS_SRC_ALPHA,[Cf]:n.ONE_MINUS_DST_COLOR,[Af]:n.ONE_MINUS_DST_ALPHA,[Lf]:n.CONSTANT_COLOR,[Df]:n.ONE_MINUS_CONSTANT_COLOR,[Nf]:n.CONSTANT_ALPHA,[If]:n.ONE_MINUS_CONSTANT_ALPHA};function Oe(U,J,$,ct,rt,ot,Tt,zt,it,wt){if(U===ps){m===!0&&(Nt(n.BLEND),m=!1);return}if(m===!1&&(mt(n.BLEND),m=!0),U!==gf){if(U!==p||wt!==w){if((x!==cs||M!==cs)&&(n.blendEquation(n.FUNC_ADD),x=cs,M=cs),wt)switch(U){case Bs:n.blendFuncSeparate(n.ONE,n.ONE_MINUS_SRC_ALPHA,n.ONE,n.ONE_MINUS_SRC_ALPHA);break;case Ic:n.blendFunc(n.ONE,n.ONE);break;case Uc:n.blendFuncSeparate(n.ZERO,n.ONE_MINUS_SRC_COLOR,n.ZERO,n.ONE);break;case Fc:n.blendFuncSeparate(n.DST_COLOR,n.ONE_MINUS_SRC_ALPHA,n.ZERO,n.ONE);break;default:Zt("WebGLState: Invalid blending: ",U);break}else switch(U){case Bs:n.blendFuncSeparate(n.SRC_ALPHA,n.ONE_MINUS_SRC_ALPHA,n.ONE,n.ONE_MINUS_SRC_ALPHA);break;case Ic:n.blendFuncSeparate(n.SRC_ALPHA,n.ONE,n.ONE,n.ONE);break;case Uc:Zt("WebGLState: SubtractiveBlending requires material.premultipliedAlpha = true");break;case Fc:Zt("WebGLState: MultiplyBlending requires material.premultipliedAlpha = true");break;default:Zt("WebGLState: Invalid blending: ",U);break}y=null,v=null,A=null,_=null,E.set(0,0,0),D=0,p=U,w=wt}return}rt=rt||J,ot=ot||$,Tt=Tt||ct,(J!==x||rt!==M)&&(n.blendEquationSeparate(ne[J],ne[rt]),x=J,M=rt),($!==y||ct!==v||ot!==A||Tt!==_)&&(n.blendFuncSeparate(Gt[$],Gt[ct],Gt[ot],Gt[Tt]),y=$,v=ct,A=ot,_=Tt),(zt.equals(E)===!1||it!==D)&&(n.blendColor(zt.r,zt.g,zt.b,it),E.copy(zt),D=it),p=U,w=!1}function ye(U,J){U.side===rn?Nt(n.CULL_FACE):mt(n.CULL_FACE);let $=U.side===Qe;J&&($=!$),nn($),U.blending===Bs&&U.transparent===!1?Oe(ps):Oe(U.blending,U.blendEquation,U.blendSrc,U.blendDst,U.blendEquationAlpha,U.blendSrcAlpha,U.blendDstAlpha,U.blendColor,U.blendAlpha,U.premultipliedAlpha),a.setFunc(U.depthFunc),a.setTest(U.depthTest),a.setMask(U.depthWrite),r.setMask(U.colorWrite);const ct=U.stencilWrite;o.setTest(ct),ct&&(o.setMask(U.stencilWriteMask),o.setFunc(U.stencilFunc,U.stencilRef,U.stencilFuncMask),o.setOp(U.stencilFail,U.stencilZFail,U.stencilZPass)),Ce(U.polygonOffset,U.polygonOffsetFactor,U.polygonOffsetUnits),U.alphaToCoverage===!0?mt(n.SAMPLE_ALPHA_TO_COVERAGE):Nt(n.SAMPLE_ALPHA_TO_COVERAGE)}function nn(U){P!==U&&(U?n.frontFace(n.CW):n.frontFace(n.CCW),P=U)}function ce(U){U!==pf?(mt(n.CULL_FACE),U!==N&&(U===Nc?n.cullFace(n.BACK):U===mf?n.cullFace(n.FRONT):n.cullFace(n.FRONT_AND_BACK))):Nt(n.CULL_FACE),N=U}function Dn(U){U!==F&&(k&&n.lineWidth(U),F=U)}function Ce(U,J,$){U?(mt(n.POLYGON_OFFSET_FILL),(C!==J||B!==$)&&(C=J,B=$,a.getReversed()&&(J=-J,$=-$),n.polygonOffset(J,$))):Nt(n.POLYGON_OFFSET_FILL)}function dn(U){U?mt(n.SCISSOR_TEST):Nt(n.SCISSOR_TEST)}function fn(U){U===void 0&&(U=n.TEXTURE0+W-1),j!==U&&(n.activeTexture(U),j=U)}function pn(U,J,$){$===void 0&&(j===null?$=n.TEXTURE0+W-1:$=j);let ct=tt[$];ct===void 0&&(ct={type:void 0,texture:void 0},tt[$]=ct),(ct.type!==U||ct.texture!==J)&&(j!==$&&(n.activeTexture($),j=$),n.bindTexture(U,J||At[U]),ct.type=U,ct.texture=J)}function z(){const U=tt[j];U!==void 0&&U.type!==void 0&&(n.bindTexture(U.type,null),U.type=void 0,U.texture=void 0)}function mn(){try{n.compressedTexImage2D(...arguments)}catch(U){Zt("WebGLState:",U)}}function oe(){try{n.compressedTexImage3D(...arguments)}catch(U){Zt("WebGLState:",U)}}function le(){try{n.texSubImage2D(...arguments)}catch(U){Zt("WebGLState:",U)}}function pt(){try{n.texSubImage3D(...arguments)}catch(U){Zt("WebGLState:",U)}}function Ee(){try{n.compressedTexSubImage2D(...arguments)}catch(U){Zt("WebGLState:",U)}}function Pt(){try{n.compressedTexSubImage3D(...arguments)}catch(U){Zt("WebGLState:",U)}}function It(){try{n.texStorage2D(...arguments)}catch(U){Zt("WebGLState:",U)}}function L(){try{n.texStorage3D(...arguments)}catch(U){Zt("WebGLState:",U)}}function T(){try{n.texImage2D(...arguments)}catch(U){Zt("WebGLState:",U)}}function G(){try{n.texImage3D(...arguments)}catch(U){Zt("WebGLState:",U)}}function nt(U){return d[U]!==void 0?d[U]:n.getParameter(U)}function Q(U,J){d[U]!==J&&(n.pixelStorei(U,J),d[U]=J)}function at(U){Z.equals(U)===!1&&(n.scissor(U.x,U.y,U.z,U.w),Z.copy(U))}function dt(U){ht.equals(U)===!1&&(n.viewport(U.x,U.y,U.z,U.w),ht.copy(U))}function Y(U,J){let $=c.get(J);$===void 0&&($=new WeakMap,c.set(J,$));let ct=$.get(U);ct===void 0&&(ct=n.getUniformBlockIndex(J,U.name),n.uniformBlockBinding(J,ct,ct),$.set(U,ct))}function K(U,J,$){const rt=c.get(J).get(U);l[rt]!==$&&(n.bindBufferBase(n.UNIFORM_BUFFER,rt,$),l[rt]=$)}function lt(){n.disable(n.BLEND),n.disable(n.CULL_FACE),n.disable(n.DEPTH_TEST),n.disable(n.POLYGON_OFFSET_FILL),n.disable(n.SCISSOR_TEST),n.disable(n.STENCIL_TEST),n.disable(n.SAMPLE_ALPHA_TO_COVERAGE),n.blendEquation(n.FUNC_ADD),n.blendFunc(n.ONE,n.ZERO),n.blendFuncSeparate(n.ONE,n.ZERO,n.ONE,n.ZERO),n.blendColor(0,0,0,0),n.colorMask(!0,!0,!0,!0),n.clearColor(0,0,0,0),n.depthMask(!0),n.depthFunc(n.LESS),a.setReversed(!1),n.clearDepth(1),n.stencilMask(4294967295),n.stencilFunc(n.ALWAYS,0,4294967295),n.stencilOp(n.KEEP,n.KEEP,n.KEEP),n.clearStencil(0),n.cullFace(n.BACK),n.frontFace(n.CCW),n.polygonOffset(0,0),n.activeTexture(n.TEXTURE0),n.bindFramebuffer(n.FRAMEBUFFER,null),n.bindFramebuffer(n.DRAW_FRAMEBUFFER,null),n.bindFramebuffer(n.READ_FRAMEBUFFER,null),n.useProgram(null),n.lineWidth(1),n.scissor(0,0,n.canvas.width,n.canvas.height),n.viewport(0,0,n.canvas.width,n.canvas.height),n.pixelStorei(n.PACK_ALIGNMENT,4),n.pixelStorei(n.UNPACK_ALIGNMENT,4),n.pixelStorei(n.UNPACK_FLIP_Y_WEBGL,!1),n.pixelStorei(n.UNPACK_PREMULTIPLY_ALPHA_WEBGL,!1),n.pixelStorei(n.UNPACK_COLORSPACE_CONVERSION_WEBGL,n.BROWSER_DEFAULT_WEBGL),n.pixelStorei(n.PACK_ROW_LENGTH,0),n.pixelStorei(n.PACK_SKIP_PIXELS,0),n.pixelStorei(n.PACK_SKIP_ROWS,0),n.pixelStorei(n.UNPACK_ROW_LENGTH,0),n.pixelStorei(n.UNPACK_IMAGE_HEIGHT,0),n.pixelStorei(n.UNPACK_SKIP_PIXELS,0),n.pixelStorei(n.UNPACK_SKIP_ROWS,0),n.pixelStorei(n.UNPACK_SKIP_IMAGES,0),h={},d={},j=null,tt={},u={},l={},f=new WeakMap,g=[],S=null,m=!1,p=null,x=null,y=null,v=null,M=null,A=null,_=null,E=new Xt(0,0,0),D=0,w=!1,P=null,N=null,F=null,C=null,B=null,Z.set(0,0,n.canvas.width,n.canvas.height),ht.set(0,0,n.canvas.width,n.canvas.height),r.reset(),a.reset(),o.reset()}return{buffers:{color:r,depth:a,stencil:o},enable:mt,disable:Nt,bindFramebuffer:he,drawBuffers:Ct,useProgram:Yt,setBlending:Oe,setMaterial:ye,setFlipSided:nn,setCullFace:ce,setLineWidth:Dn,setPolygonOffset:Ce,setScissorTest:dn,activeTexture:fn,bindTexture:pn,unbindTexture:z,compressedTexImage2D:mn,compressedTexImage3D:oe,texImage2D:T,texImage3D:G,pixelStorei:Q,getParameter:nt,updateUBOMapping:Y,uniformBlockBinding:K,texStorage2D:It,texStorage3D:L,texSubImage2D:le,texSubImage3D:pt,compressedTexSubImage2D:Ee,compressedTexSubImage3D:Pt,scissor:at,viewport:dt,reset:lt}}function Ex(n,t,e,i,s,r,a){const o=t.has("WEBGL_multisampled_render_to_texture")?t.get("WEBGL_multisampled_render_to_texture"):null,l=typeof navigator>"u"?!1:/OculusBrowser/g.test(navigator.userAgent),c=new Rt,h=new WeakMap,d=new Set;let u;const f=new WeakMap,g=new Set,S=new FinalizationRegistry(L=>g.delete(L));let m=!1;try{m=typeof OffscreenCanvas<"u"&&new OffscreenCanvas(1,1).getContext("2d")!==null}catch{}function p(L,T){return m?new OffscreenCanvas(L,T):_a("canvas")}function x(L,T,G){let nt=1;const Q=It(L);if((Q.width>G||Q.height>G)&&(nt=G/Math.max(Q.width,Q.height)),nt<1)if(typeof HTMLImageElement<"u"&&L instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&L instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&L instanceof ImageBitmap||typeof VideoFrame<"u"&&L instanceof VideoFrame){const at=Math.floor(nt*Q.width),dt=Math.floor(nt*Q.height);u===void 0&&(u=p(at,dt));const Y=T?p(at,dt):u;return Y.width=at,Y.height=dt,Y.getContext("2d").drawImage(L,0,0,at,dt),Lt("WebGLRenderer: Texture has been resized from ("+Q.width+"x"+Q.height+") to ("+at+"x"+dt+")."),Y}else return"data"in L&&Lt("WebGLRenderer: Image in DataTexture is too big ("+Q.width+"x"+Q.height+")."),L;return L}function y(L){return L.generateMipmaps}function v(L){n.generateMipmap(L)}function M(L){return L.isWebGLCubeRenderTarget?n.TEXTURE_CUBE_MAP:L.isWebGL3DRenderTarget?n.TEXTURE_3D:L.isWebGLArrayRenderTarget||L.isCompressedArrayTexture?n.TEXTURE_2D_ARRAY:n.TEXTURE_2D}function A(L,T,G,nt,Q,at=!1){if(L!==null){if(n[L]!==void 0)return n[L];Lt("WebGLRenderer: Attempt to use non-existing WebGL internal format '"+L+"'")}let dt;nt&&(dt=t.get("EXT_texture_norm16"),dt||Lt("WebGLRenderer: Unable to use normalized textures without EXT_texture_norm16 extension"));let Y=T;if(T===n.RED&&(G===n.FLOAT&&(Y=n.R32F),G===n.HALF_FLOAT&&(Y=n.R16F),G===n.UNSIGNED_BYTE&&(Y=n.R8),G===n.UNSIGNED_SHORT&&dt&&(Y=dt.R16_EXT),G===n.SHORT&&dt&&(Y=dt.R16_SNORM_EXT)),T===n.RED_INTEGER&&(G===n.UNSIGNED_BYTE&&(Y=n.R8UI),G===n.UNSIGNED_SHORT&&(Y=n.R16UI),G===n.UNSIGNED_INT&&(Y=n.R32UI),G===n.BYTE&&(Y=n.R8I),G===n.SHORT&&(Y=n.R16I),G===n.INT&&(Y=n.R32I)),T===n.RG&&(G===n.FLOAT&&(Y=n.RG32F),G===n.HALF_FLOAT&&(Y=n.RG16F),G===n.UNSIGNED_BYTE&&(Y=n.RG8),G===n.UNSIGNED_SHORT&&dt&&(Y=dt.RG16_EXT),G===n.SHORT&&dt&&(Y=dt.RG16_SNORM_EXT)),T===n.RG_INTEGER&&(G===n.UNSIGNED_BYTE&&(Y=n.RG8UI),G===n.UNSIGNED_SHORT&&(Y=n.RG16UI),G===n.UNSIGNED_INT&&(Y=n.RG32UI),G===n.BYTE&&(Y=n.RG8I),G===n.SHORT&&(Y=n.RG16I),G===n.INT&&(Y=n.RG32I)),T===n.RGB_INTEGER&&(G===n.UNSIGNED_BYTE&&(Y=n.RGB8UI),G===n.UNSIGNED_SHORT&&(Y=n.RGB16UI),G===n.UNSIGNED_INT&&(Y=n.RGB32UI),G===n.BYTE&&(Y=n.RGB8I),G===n.SHORT&&(Y=n.RGB16I),G===n.INT&&(Y=n.RGB32I)),T===n.RGBA_INTEGER&&(G===n.UNSIGNED_BYTE&&(Y=n.RGBA8UI),G===n.UNSIGNED_SHORT&&(Y=n.RGBA16UI),G===n.UNSIGNED_INT&&(Y=n.RGBA32UI),G===n.BYTE&&(Y=n.RGBA8I),G===n.SHORT&&(Y=n.RGBA16I),G===n.INT&&(Y=n.RGBA32I)),T===n.RGB&&(G===n.UNSIGNED_SHORT&&dt&&(Y=dt.RGB16_EXT),G===n.SHORT&&dt&&(Y=dt.RGB16_SNORM_EXT),G===n.UNSIGNED_INT_5_9_9_9_REV&&(Y=n.RGB9_E5),G===n.UNSIGNED_INT_10F_11F_11F_REV&&(Y=n.R11F_G11F_B10F)),T===n.RGBA){const K=at?ma:qt.getTransfer(Q);G===n.FLOAT&&(Y=n.RGBA32F),G===n.HALF_FLOAT&&(Y=n.RGBA16F),G===n.UNSIGNED_BYTE&&(Y=K===te?n.SRGB8_ALPHA8:n.RGBA8),G===n.UNSIGNED_SHORT&&dt&&(Y=dt.RGBA16_EXT),G===n.SHORT&&dt&&(Y=dt.RGBA16_SNORM_EXT),G===n.UNSIGNED_SHORT_4_4_4_4&&(Y=n.RGBA4),G===n.UNSIGNED_SHORT_5_5_5_1&&(Y=n.RGB5_A1)}return(Y===n.R16F||Y===n.R32F||Y===n.RG16F||Y===n.RG32F||Y===n.RGBA16F||Y===n.RGBA32F)&&t.get("EXT_color_buffer_float"),Y}function _(L,T){let G;return L?T===null||T===Hn||T===gs?G=n.DEPTH24_STENCIL8:T===Bn?G=n.DEPTH32F_STENCIL8:T===Xs&&(G=n.DEPTH24_STENCIL8,Lt("DepthTexture: 16 bit depth attachment is not supported with stencil. Using 24-bit attachment.")):T===null||T===Hn||T===gs?G=n.DEPTH_COMPONENT24:T===Bn?G=n.DEPTH_COMPONENT32F:T===Xs&&(G=n.DEPTH_COMPONENT16),G}function E(L,T){return y(L)===!0||L.isFramebufferTexture&&L.minFilter!==ke&&L.minFilter!==$e?Math.log2(Math.max(T.width,T.height))+1:L.mipmaps.length>0?L.mipmaps.length:L.isCompressedTexture&&Array.isArray(L.image)?T.mipmaps.length:1}function D(L){const T=new WeakRef(L);i.get(L).__ref=T,g.add(T),S.register(L,T,T)}function w(L){const T=i.get(L).__ref;T!==void 0&&(g.delete(T),S.unregister(T))}function P(L){F(L.target)}function N(L){C(L.target)}function F(L){L.removeEventListener("dispose",P),w(L),W(L),L.isVideoTexture&&h.delete(L),L.isHTMLTexture&&d.delete(L)}function C(L){L.removeEventListener("dispose",N),w(L),et(L)}function B(){for(const L of g){const T=L.deref();T!==void 0&&(T.isRenderTarget===!0?C(T):F(T))}g.clear(),d.clear()}function W(L){const T=i.get(L);if(T.__webglInit===void 0)return;const G=L.source,nt=f.get(G);if(nt){const Q=nt[T.__cacheKey];Q.usedTimes--,Q.usedTimes===0&&k(L),Object.keys(nt).length===0&&f.delete(G)}i.remove(L)}function k(L){const T=i.get(L);n.deleteTexture(T.__webglTexture);const G=L.source,nt=f.get(G);delete nt[T.__cacheKey],a.memory.textures--}function et(L){const T=i.get(L);T.__depthDisposeCallback&&T.__depthDisposeCallback();const G=L.depthTexture;if(G&&G.renderTarget===L&&F(G),L.isWebGLCubeRenderTarget)for(let Q=0;Q<6;Q++){if(Array.isArray(T.__webglFramebuffer[Q]))for(let at=0;at<T.__webglFramebuffer[Q].length;at++)n.deleteFramebuffer(T.__webglFramebuffer[Q][at]);else n.deleteFramebuffer(T.__webglFramebuffer[Q]);T.__webglDepthbuffer&&n.deleteRenderbuffer(T.__webglDepthbuffer[Q])}else{if(Array.isArray(T.__webglFramebuffer))for(let Q=0;Q<T.__webglFramebuffer.length;Q++)n.deleteFramebuffer(T.__webglFramebuffer[Q]);else n.deleteFramebuffer(T.__webglFramebuffer);if(T.__webglDepthbuffer&&n.deleteRenderbuffer(T.__webglDepthbuffer),T.__webglMultisampledFramebuffer&&n.deleteFramebuffer(T.__webglMultisampledFramebuffer),T.__webglColorRenderbuffer)for(let Q=0;Q<T.__webglColorRenderbuffer.length;Q++)T.__webglColorRenderbuffer[Q]&&n.deleteRenderbuffer(T.__webglColorRenderbuffer[Q]);T.__webglDepthRenderbuffer&&n.deleteRenderbuffer(T.__webglDepthRenderbuffer)}const nt=L.textures;for(let Q=0,at=nt.length;Q<at;Q++){const dt=i.get(nt[Q]);dt.__webglTexture&&(n.deleteTexture(dt.__webglTexture),a.memory.textures--),i.remove(nt[Q])}i.remove(L)}let q=0;function j(){q=0}function tt(){return q}function St(L){q=L}function Dt(){const L=q;return L>=s.maxTextures&&Lt("WebGLTextures: Trying to use "+(L+1)+" texture units while this GPU supports only "+s.maxTextures),q+=1,L}function Z(L){const T=[];return T.push(L.wrapS),T.push(L.wrapT),T.push(L.wrapR||0),T.push(L.magFilter),T.push(L.minFilter),T.push(L.anisotropy),T.push(L.internalFormat),T.push(L.format),T.push(L.type),T.push(L.generateMipmaps),T.push(L.mipmapsAutoUpdate),T.push(L.premultiplyAlpha),T.push(L.flipY),T.push(L.unpackAlignment),T.push(L.colorSpace),T.join()}function ht(L,T){const G=i.get(L);if(L.isVideoTexture&&Ee(L),L.isRenderTargetTexture===!1&&L.isExternalTexture!==!0&&L.version>0&&G.__version!==L.version){const nt=L.image;if(nt===null)Lt("WebGLRenderer: Texture marked for update but no image data found.");else if(nt.complete===!1)Lt("WebGLRenderer: Texture marked for update but image is incomplete");else{ye(G,L,T);return}}else L.isExternalTexture&&(G.__webglTexture=L.sourceTexture?L.sourceTexture:null);e.bindTexture(n.TEXTURE_2D,G.__webglTexture,n.TEXTURE0+T)}function vt(L,T){const G=i.get(L);if(L.isRenderTargetTexture===!1&&L.version>0&&G.__version!==L.version){ye(G,L,T);return}else L.isExternalTexture&&(G.__webglTexture=L.sourceTexture?L.sourceTexture:null);e.bindTexture(n.TEXTURE_2D_ARRAY,G.__webglTexture,n.TEXTURE0+T)}function At(L,T){const G=i.get(L);if(L.isRenderTargetTexture===!1&&L.version>0&&G.__version!==L.version){ye(G,L,T);return}e.bindTexture(n.TEXTURE_3D,G.__webglTexture,n.TEXTURE0+T)}function mt(L,T){const G=i.get(L);if(L.version>0&&G.__version!==L.version){nn(G,L,T);return}e.bindTexture(n.TEXTURE_CUBE_MAP,G.__webglTexture,n.TEXTURE0+T)}const Nt={[Oo]:n.REPEAT,[Qn]:n.CLAMP_TO_EDGE,[Bo]:n.MIRRORED_REPEAT},he={[ke]:n.NEAREST,[Of]:n.NEAREST_MIPMAP_NEAREST,[sr]:n.NEAREST_MIPMAP_LINEAR,[$e]:n.LINEAR,[Fa]:n.LINEAR_MIPMAP_NEAREST,[gi]:n.LINEAR_MIPMAP_LINEAR},Ct={[Hf]:n.NEVER,[Kh]:n.ALWAYS,[Gf]:n.LESS,[$h]:n.LEQUAL,[Vf]:n.EQUAL,[Yh]:n.GEQUAL,[Wf]:n.GREATER,[Xf]:n.NOTEQUAL};function Yt(L,T){if(T.type===Bn&&t.has("OES_texture_float_linear")===!1&&(T.magFilter===$e||T.magFilter===Fa||T.magFilter===sr||T.magFilter===gi||T.minFilter===$e||T.minFilter===Fa||T.minFilter===sr||T.minFilter===gi)&&Lt("WebGLRenderer: Unable to use linear filtering with floating point textures. OES_texture_float_linear not supported on this device."),n.texParameteri(L,n.TEXTURE_WRAP_S,Nt[T.wrapS]),n.texParameteri(L,n.TEXTURE_WRAP_T,Nt[T.wrapT]),(L===n.TEXTURE_3D||L===n.TEXTURE_2D_ARRAY)&&n.texParameteri(L,n.TEXTURE_WRAP_R,Nt[T.wrapR]),n.texParameteri(L,n.TEXTURE_MAG_FILTER,he[T.magFilter]),n.texParameteri(L,n.TEXTURE_MIN_FILTER,he[T.minFilter]),T.compareFunction&&(n.texParameteri(L,n.TEXTURE_COMPARE_MODE,n.COMPARE_REF_TO_TEXTURE),n.texParameteri(L,n.TEXTURE_COMPARE_FUNC,Ct[T.compareFunction])),t.has("EXT_texture_filter_anisotropic")===!0){if(T.magFilter===ke||T.minFilter!==sr&&T.minFilter!==gi||T.type===Bn&&t.has("OES_texture_float_linear")===!1)return;if(T.anisotropy>1||i.get(T).__currentAnisotropy){const G=t.get("EXT_texture_filter_anisotropic");n.texParameterf(L,G.TEXTURE_MAX_ANISOTROPY_EXT,Math.min(T.anisotropy,s.getMaxAnisotropy())),i.get(T).__currentAnisotropy=T.anisotropy}}}function ne(L,T){let G=!1;L.__webglInit===void 0&&(L.__webglInit=!0,T.addEventListener("dispose",P),D(T));const nt=T.source;let Q=f.get(nt);Q===void 0&&(Q={},f.set(nt,Q));const at=Z(T);if(at!==L.__cacheKey){Q[at]===void 0&&(Q[at]={texture:n.createTexture(),usedTimes:0},a.memory.textures++,G=!0),Q[at].usedTimes++;const dt=Q[L.__cacheKey];dt!==void 0&&(Q[L.__cacheKey].usedTimes--,dt.usedTimes===0&&k(T)),L.__cacheKey=at,L.__webglTexture=Q[at].texture}return G}function Gt(L,T,G){return Math.floor(Math.floor(L/G)/T)}function Oe(L,T,G,nt){const at=L.updateRanges;if(at.length===0)e.texSubImage2D(n.TEXTURE_2D,0,0,0,T.width,T.height,G,nt,T.data);else{at.sort((U,J)=>U.start-J.start);let dt=0;for(let U=1;U<at.length;U++){const J=at[dt],$=at[U],ct=J.start+J.count,rt=Gt($.start,T.width,4),ot=Gt(J.start,T.width,4);$.start<=ct+1&&rt===ot&&Gt($.start+$.count-1,T.width,4)===rt?J.count=Math.max(J.count,$.start+$.count-J.start):(++dt,at[dt]=$)}at.length=dt+1;const Y=e.getParameter(n.UNPACK_ROW_LENGTH),K=e.getParameter(n.UNPACK_SKIP_PIXELS),lt=e.getParameter(n.UNPACK_SKIP_ROWS);e.pixelStorei(n.UNPACK_ROW_LENGTH,T.width);for(let U=0,J=at.length;U<J;U++){const $=at[U],ct=Math.floor($.start/4),rt=Math.ceil($.count/4),ot=ct%T.width,Tt=Math.floor(ct/T.width),zt=rt,it=1;e.pixelStorei(n.UNPACK_SKIP_PIXELS,ot),e.pixelStorei(n.UNPACK_SKIP_ROWS,Tt),e.texSubImage2D(n.TEXTURE_2D,0,ot,Tt,zt,it,G,nt,T.data)}L.clearUpdateRanges(),e.pixelStorei(n.UNPACK_ROW_LENGTH,Y),e.pixelStorei(n.UNPACK_SKIP_PIXELS,K),e.pixelStorei(n.UNPACK_SKIP_ROWS,lt)}}function ye(L,T,G){let nt=n.TEXTURE_2D;(T.isDataArrayTexture||T.isCompressedArrayTexture)&&(nt=n.TEXTURE_2D_ARRAY),T.isData3DTexture&&(nt=n.TEXTURE_3D);const Q=ne(L,T),at=T.source;e.bindTexture(nt,L.__webglTexture,n.TEXTURE0+G);const dt=i.get(at);if(at.version!==dt.__version||Q===!0){if(e.activeTexture(n.TEXTURE0+G),(typeof ImageBitmap<"u"&&T.image instanceof ImageBitmap)===!1){const it=qt.getPrimaries(qt.workingColorSpace),wt=T.colorSpace===_i?null:qt.getPrimaries(T.colorSpace),Bt=T.colorSpace===_i||it===wt?n.NONE:n.BROWSER_DEFAULT_WEBGL;e.pixelStorei(n.UNPACK_FLIP_Y_WEBGL,T.flipY),e.pixelStorei(n.UNPACK_PREMULTIPLY_ALPHA_WEBGL,T.premultiplyAlpha),e.pixelStorei(n.UNPACK_COLORSPACE_CONVERSION_WEBGL,Bt)}e.pixelStorei(n.UNPACK_ALIGNMENT,T.unpackAlignment);let K=x(T.image,!1,s.maxTextureSize);K=Pt(T,K);const lt=r.convert(T.format,T.colorSpace),U=r.convert(T.type);let J=A(T.internalFormat,lt,U,T.normalized,T.colorSpace,T.isVideoTexture);Yt(nt,T);let $;const ct=T.mipmaps,rt=T.isVideoTexture!==!0,ot=dt.__version===void 0||Q===!0,Tt=at.dataReady,zt=E(T,K);if(T.isDepthTexture)J=_(T.format===xi,T.type),ot&&(rt?e.texStorage2D(n.TEXTURE_2D,1,J,K.width,K.height):e.texImage2D(n.TEXTURE_2D,0,J,K.width,K.height,0,lt,U,null));else if(T.isDataTexture)if(ct.length>0){rt&&ot&&e.texStorage2D(n.TEXTURE_2D,zt,J,ct[0].width,ct[0].height);for(let it=0,wt=ct.length;it<wt;it++)$=ct[it],rt?Tt&&e.texSubImage2D(n.TEXTURE_2D,it,0,0,$.width,$.height,lt,U,$.data):e.texImage2D(n.TEXTURE_2D,it,J,$.width,$.height,0,lt,U,$.data);T.generateMipmaps=!1}else rt?(ot&&e.texStorage2D(n.TEXTURE_2D,zt,J,K.width,K.height),Tt&&Oe(T,K,lt,U)):e.texImage2D(n.TEXTURE_2D,0,J,K.width,K.height,0,lt,U,K.data);else if(T.isCompressedTexture)if(T.isCompressedArrayTexture){rt&&ot&&e.texStorage3D(n.TEXTURE_2D_ARRAY,zt,J,ct[0].width,ct[0].height,K.depth);for(let it=0,wt=ct.length;it<wt;it++)if($=ct[it],T.format!==zn)if(lt!==null)if(rt){if(Tt)if(T.layerUpdates.size>0){const Bt=pu($.width,$.height,T.format,T.type);for(const _t of T.layerUpdates){const jt=$.data.subarray(_t*Bt/$.data.BYTES_PER_ELEMENT,(_t+1)*Bt/$.data.BYTES_PER_ELEMENT);e.compressedTexSubImage3D(n.TEXTURE_2D_ARRAY,it,0,0,_t,$.width,$.height,1,lt,jt)}}else e.compressedTexSubImage3D(n.TEXTURE_2D_ARRAY,it,0,0,0,$.width,$.height,K.depth,lt,$.data)}else e.compressedTexImage3D(n.TEXTURE_2D_ARRAY,it,J,$.width,$.height,K.depth,0,$.data,0,0);else Lt("WebGLRenderer: Attempt to load unsupported compressed texture format in .uploadTexture()");else rt?Tt&&e.texSubImage3D(n.TEXTURE_2D_ARRAY,it,0,0,0,$.width,$.height,K.depth,lt,U,$.data):e.texImage3D(n.TEXTURE_2D_ARRAY,it,J,$.width,$.height,K.depth,0,lt,U,$.data);T.layerUpdates.size>0&&T.clearLayerUpdates()}else{rt&&ot&&e.texStorage2D(n.TEXTURE_2D,zt,J,ct[0].width,ct[0].height);for(let it=0,wt=ct.length;it<wt;it++)$=ct[it],T.format!==zn?lt!==null?rt?Tt&&e.compressedTexSubImage2D(n.TEXTURE_2D,it,0,0,$.width,$.height,lt,$.data):e.compressedTexImage2D(n.TEXTURE_2D,it,J,$.width,$.height,0,$.data):Lt("WebGLRenderer: Attempt to load unsupported compressed texture format in .uploadTexture()"):rt?Tt&&e.texSubImage2D(n.TEXTURE_2D,it,0,0,$.width,$.height,lt,U,$.data):e.texImage2D(n.TEXTURE_2D,it,J,$.width,$.height,0,lt,U,$.data)}else if(T.isDataArrayTexture)if(rt){if(ot&&e.texStorage3D(n.TEXTURE_2D_ARRAY,zt,J,K.width,K.height,K.depth),Tt)if(T.layerUpdates.size>0){const it=pu(K.width,K.height,T.format,T.type);for(const wt of T.layerUpdates){const Bt=K.data.subarray(wt*it/K.data.BYTES_PER_ELEMENT,(wt+1)*it/K.data.BYTES_PER_ELEMENT);e.texSubImage3D(n.TEXTURE_2D_ARRAY,0,0,0,wt,K.width,K.height,1,lt,U,Bt)}T.clearLayerUpdates()}else e.texSubImage3D(n.TEXTURE_2D_ARRAY,0,0,0,0,K.width,K.height,K.depth,lt,U,K.data)}else e.texImage3D(n.TEXTURE_2D_ARRAY,0,J,K.width,K.height,K.depth,0,lt,U,K.data);else if(T.isData3DTexture)rt?(ot&&e.texStorage3D(n.TEXTURE_3D,zt,J,K.width,K.height,K.depth),Tt&&e.texSubImage3D(n.TEXTURE_3D,0,0,0,0,K.width,K.height,K.depth,lt,U,K.data)):e.texImage3D(n.TEXTURE_3D,0,J,K.width,K.height,K.depth,0,lt,U,K.data);else if(T.isFramebufferTexture){if(ot)if(rt)e.texStorage2D(n.TEXTURE_2D,zt,J,K.width,K.height);else{let it=K.width,wt=K.height;for(let Bt=0;Bt<zt;Bt++)e.texImage2D(n.TEXTURE_2D,Bt,J,it,wt,0,lt,U,null),it>>=1,wt>>=1}}else if(T.isHTMLTexture){if("texElementImage2D"in n){const it=n.canvas;if(it.hasAttribute("layoutsubtree")||it.setAttribute("layoutsubtree","true"),K.parentNode!==it){it.appendChild(K),d.add(T),it.onpaint=wt=>{const Bt=wt.changedElements;for(const _t of d)Bt.includes(_t.image)&&(_t.needsUpdate=!0)},it.requestPaint();return}if(n.texElementImage2D.length===3)n.texElementImage2D(n.TEXTURE_2D,n.RGBA8,K);else{const Bt=n.RGBA,_t=n.RGBA,jt=n.UNSIGNED_BYTE;n.texElementImage2D(n.TEXTURE_2D,0,Bt,_t,jt,K)}n.texParameteri(n.TEXTURE_2D,n.TEXTURE_MIN_FILTER,n.LINEAR),n.texParameteri(n.TEXTURE_2D,n.TEXTURE_WRAP_S,n.CLAMP_TO_EDGE),n.texParameteri(n.TEXTURE_2D,n.TEXTURE_WRAP_T,n.CLAMP_TO_EDGE)}}else if(ct.length>0){if(rt&&ot){const it=It(ct[0]);e.texStorage2D(n.TEXTURE_2D,zt,J,it.width,it.height)}for(let it=0,wt=ct.length;it<wt;it++)$=ct[it],rt?Tt&&e.texSubImage2D(n.TEXTURE_2D,it,0,0,lt,U,$):e.texImage2D(n.TEXTURE_2D,it,J,lt,U,$);T.generateMipmaps=!1}else if(rt){if(ot){const it=It(K);e.texStorage2D(n.TEXTURE_2D,zt,J,it.width,it.height)}Tt&&e.texSubImage2D(n.TEXTURE_2D,0,0,0,lt,U,K)}else e.texImage2D(n.TEXTURE_2D,0,J,lt,U,K);y(T)&&T.mipmapsAutoUpdate===!0&&v(nt),dt.__version=at.version,T.onUpdate&&T.onUpdate(T)}L.__version=T.version}function nn(L,T,G){if(T.image.length!==6)return;const nt=ne(L,T),Q=T.source;e.bindTexture(n.TEXTURE_CUBE_MAP,L.__webglTexture,n.TEXTURE0+G);const at=i.get(Q);if(Q.version!==at.__version||nt===!0){e.activeTexture(n.TEXTURE0+G);const dt=qt.getPrimaries(qt.workingColorSpace),Y=T.colorSpace===_i?null:qt.getPrimaries(T.colorSpace),K=T.colorSpace===_i||dt===Y?n.NONE:n.BROWSER_DEFAULT_WEBGL;e.pixelStorei(n.UNPACK_FLIP_Y_WEBGL,T.flipY),e.pixelStorei(n.UNPACK_PREMULTIPLY_ALPHA_WEBGL,T.premultiplyAlpha),e.pixelStorei(n.UNPACK_ALIGNMENT,T.unpackAlignment),e.pixelStorei(n.UNPACK_COLORSPACE_CONVERSION_WEBGL,K);const lt=T.isCompressedTexture||T.image[0].isCompressedTexture,U=T.image[0]&&T.image[0].isDataTexture,J=[];for(let _t=0;_t<6;_t++)!lt&&!U?J[_t]=x(T.image[_t],!0,s.maxCubemapSize):J[_t]=U?T.image[_t].image:T.image[_t],J[_t]=Pt(T,J[_t]);const $=J[0],ct=r.convert(T.format,T.colorSpace),rt=r.convert(T.type);let ot=A(T.internalFormat,ct,rt,T.normalized,T.colorSpace);const Tt=T.isVideoTexture!==!0,zt=at.__version===void 0||nt===!0,it=Q.dataReady;let wt=E(T,$);Yt(n.TEXTURE_CUBE_MAP,T);let Bt;if(T.isDepthTexture){if(ot=_(T.format===xi,T.type),zt)if(Tt)e.texStorage2D(n.TEXTURE_CUBE_MAP,1,ot,$.width,$.height);else for(let _t=0;_t<6;_t++)e.texImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+_t,0,ot,$.width,$.height,0,ct,rt,null)}else if(lt){Tt&&zt&&e.texStorage2D(n.TEXTURE_CUBE_MAP,wt,ot,$.width,$.height);for(let _t=0;_t<6;_t++){Bt=J[_t].mipmaps;for(let jt=0;jt<Bt.length;jt++){const Pe=Bt[jt];T.format!==zn?ct!==null?Tt?it&&e.compressedTexSubImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+_t,jt,0,0,Pe.width,Pe.height,ct,Pe.data):e.compressedTexImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+_t,jt,ot,Pe.width,Pe.height,0,Pe.data):Lt("WebGLRenderer: Attempt to load unsupported compressed texture format in .setTextureCube()"):Tt?it&&e.texSubImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+_t,jt,0,0,Pe.width,Pe.height,ct,rt,Pe.data):e.texImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+_t,jt,ot,Pe.width,Pe.height,0,ct,rt,Pe.data)}}}else{if(Bt=T.mipmaps,Tt&&zt){Bt.length>0&&wt++;const _t=It(J[0]);e.texStorage2D(n.TEXTURE_CUBE_MAP,wt,ot,_t.width,_t.height)}for(let _t=0;_t<6;_t++)if(U){Tt?it&&e.texSubImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+_t,0,0,0,J[_t].width,J[_t].height,ct,rt,J[_t].data):e.texImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+_t,0,ot,J[_t].width,J[_t].height,0,ct,rt,J[_t].data);for(let jt=0;jt<Bt.length;jt++){const ri=Bt[jt].image[_t].image;Tt?it&&e.texSubImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+_t,jt+1,0,0,ri.width,ri.height,ct,rt,ri.data):e.texImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+_t,jt+1,ot,ri.width,ri.height,0,ct,rt,ri.data)}}else{Tt?it&&e.texSubImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+_t,0,0,0,ct,rt,J[_t]):e.texImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+_t,0,ot,ct,rt,J[_t]);for(let jt=0;jt<Bt.length;jt++){const Pe=Bt[jt];Tt?it&&e.texSubImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+_t,jt+1,0,0,ct,rt,Pe.image[_t]):e.texImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+_t,jt+1,ot,ct,rt,Pe.image[_t])}}}y(T)&&T.mipmapsAutoUpdate===!0&&v(n.TEXTURE_CUBE_MAP),at.__version=Q.version,T.onUpdate&&T.onUpdate(T)}L.__version=T.version}function ce(L,T,G,nt,Q,at){const dt=r.convert(G.format,G.colorSpace),Y=r.convert(G.type),K=A(G.internalFormat,dt,Y,G.normalized,G.colorSpace),lt=i.get(T),U=i.get(G);if(U.__renderTarget=T,!lt.__hasExternalTextures){const J=Math.max(1,T.width>>at),$=Math.max(1,T.height>>at);Q===n.TEXTURE_3D||Q===n.TEXTURE_2D_ARRAY?e.texImage3D(Q,at,K,J,$,T.depth,0,dt,Y,null):e.texImage2D(Q,at,K,J,$,0,dt,Y,null)}e.bindFramebuffer(n.FRAMEBUFFER,L),pt(T)?o.framebufferTexture2DMultisampleEXT(n.FRAMEBUFFER,nt,Q,U.__webglTexture,0,le(T)):(Q===n.TEXTURE_2D||Q>=n.TEXTURE_CUBE_MAP_POSITIVE_X&&Q<=n.TEXTURE_CUBE_MAP_NEGATIVE_Z)&&n.framebufferTexture2D(n.FRAMEBUFFER,nt,Q,U.__webglTexture,at),e.bindFramebuffer(n.FRAMEBUFFER,null)}function Dn(L,T,G){if(n.bindRenderbuffer(n.RENDERBUFFER,L),T.depthBuffer){const nt=T.depthTexture,Q=nt&&nt.isDepthTexture?nt.type:null,at=_(T.stencilBuffer,Q),dt=T.stencilBuffer?n.DEPTH_STENCIL_ATTACHMENT:n.DEPTH_ATTACHMENT;pt(T)?o.renderbufferStorageMultisampleEXT(n.RENDERBUFFER,le(T),at,T.width,T.height):G?n.renderbufferStorageMultisample(n.RENDERBUFFER,le(T),at,T.width,T.height):n.renderbufferStorage(n.RENDERBUFFER,at,T.width,T.height),n.framebufferRenderbuffer(n.FRAMEBUFFER,dt,n.RENDERBUFFER,L)}else{const nt=T.textures;for(let Q=0;Q<nt.length;Q++){const at=nt[Q],dt=r.convert(at.format,at.colorSpace),Y=r.convert(at.type),K=A(at.internalFormat,dt,Y,at.normalized,at.colorSpace);pt(T)?o.renderbufferStorageMultisampleEXT(n.RENDERBUFFER,le(T),K,T.width,T.height):G?n.renderbufferStorageMultisample(n.RENDERBUFFER,le(T),K,T.width,T.height):n.renderbufferStorage(n.RENDERBUFFER,K,T.width,T.height)}}n.bindRenderbuffer(n.RENDERBUFFER,null)}function Ce(L,T,G){const nt=T.isWebGLCubeRenderTarget===!0;if(e.bindFramebuffer(n.FRAMEBUFFER,L),!(T.depthTexture&&T.depthTexture.isDepthTexture))throw new Error("THREE.WebGLTextures: renderTarget.depthTexture must be an instance of THREE.DepthTexture.");const Q=i.get(T.depthTexture);Q.__renderTarget=T;const at=nt?T.depthTexture.image[0]:T.depthTexture.image;(!Q.__webglTexture||at.width!==T.width||at.height!==T.height)&&(at.width=T.width,at.height=T.height,T.depthTexture.needsUpdate=!0),nt?mt(T.depthTexture,0):ht(T.depthTexture,0);const dt=Q.__webglTexture,Y=le(T),K=nt?n.TEXTURE_CUBE_MAP_POSITIVE_X+G:n.TEXTURE_2D,lt=T.depthTexture.format===xi?n.DEPTH_STENCIL_ATTACHMENT:n.DEPTH_ATTACHMENT;if(T.depthTexture.format===Si)pt(T)?o.framebufferTexture2DMultisampleEXT(n.FRAMEBUFFER,lt,K,dt,0,Y):n.framebufferTexture2D(n.FRAMEBUFFER,lt,K,dt,0);else if(T.depthTexture.format===xi)pt(T)?o.framebufferTexture2DMultisampleEXT(n.FRAMEBUFFER,lt,K,dt,0,Y):n.framebufferTexture2D(n.FRAMEBUFFER,lt,K,dt,0);else throw new Error("THREE.WebGLTextures: Unknown depthTexture format.")}function dn(L){const T=i.get(L),G=L.isWebGLCubeRenderTarget===!0;if(T.__boundDepthTexture!==L.depthTexture){const nt=L.depthTexture;if(T.__depthDisposeCallback&&T.__depthDisposeCallback(),nt){const Q=()=>{delete T.__boundDepthTexture,delete T.__depthDisposeCallback,nt.removeEventListener("dispose",Q)};nt.addEventListener("dispose",Q),T.__depthDisposeCallback=Q}T.__boundDepthTexture=nt}if(L.depthTexture&&!T.__autoAllocateDepthBuffer)if(G)for(let nt=0;nt<6;nt++)Ce(T.__webglFramebuffer[nt],L,nt);else L.texture.mipmaps.length>0?Ce(T.__webglFramebuffer[0],L,0):Ce(T.__webglFramebuffer,L,0);else if(G){T.__webglDepthbuffer=[];for(let nt=0;nt<6;nt++)if(e.bindFramebuffer(n.FRAMEBUFFER,T.__webglFramebuffer[nt]),T.__webglDepthbuffer[nt]===void 0)T.__webglDepthbuffer[nt]=n.createRenderbuffer(),Dn(T.__webglDepthbuffer[nt],L,!1);else{const Q=L.stencilBuffer?n.DEPTH_STENCIL_ATTACHMENT:n.DEPTH_ATTACHMENT,at=T.__webglDepthbuffer[nt];n.bindRenderbuffer(n.RENDERBUFFER,at),n.framebufferRenderbuffer(n.FRAMEBUFFER,Q,n.RENDERBUFFER,at)}}else if(L.texture.mipmaps.length>0?e.bindFramebuffer(n.FRAMEBUFFER,T.__webglFramebuffer[0]):e.bindFramebuffer(n.FRAMEBUFFER,T.__webglFramebuffer),T.__webglDepthbuffer===void 0)T.__webglDepthbuffer=n.createRenderbuffer(),Dn(T.__webglDepthbuffer,L,!1);else{const Q=L.stencilBuffer?n.DEPTH_STENCIL_ATTACHMENT:n.DEPTH_ATTACHMENT,at=T.__webglDepthbuffer;n.bindRenderbuffer(n.RENDERBUFFER,at),n.framebufferRenderbuffer(n.FRAMEBUFFER,Q,n.RENDERBUFFER,at)}e.bindFramebuffer(n.FRAMEBUFFER,null)}function fn(L,T,G){const nt=i.get(L);T!==void 0&&ce(nt.__webglFramebuffer,L,L.texture,n.COLOR_ATTACHMENT0,n.TEXTURE_2D,0),G!==void 0&&dn(L)}function pn(L){const T=L.texture,G=i.get(L),nt=i.get(T);L.addEventListener("dispose",N),D(L);const Q=L.textures,at=L.isWebGLCubeRenderTarget===!0,dt=Q.length>1;if(dt||(nt.__webglTexture===void 0&&(nt.__webglTexture=n.createTexture()),nt.__version=T.version,a.memory.textures++),at){G.__webglFramebuffer=[];for(let Y=0;Y<6;Y++)if(T.mipmaps.length>0){G.__webglFramebuffer[Y]=[];for(let K=0;K<T.mipmaps.length;K++)G.__webglFramebuffer[Y][K]=n.createFramebuffer()}else G.__webglFramebuffer[Y]=n.createFramebuffer()}else{if(T.mipmaps.length>0){G.__webglFramebuffer=[];for(let Y=0;Y<T.mipmaps.length;Y++)G.__webglFramebuffer[Y]=n.createFramebuffer()}else G.__webglFramebuffer=n.createFramebuffer();if(dt)for(let Y=0,K=Q.length;Y<K;Y++){const lt=i.get(Q[Y]);lt.__webglTexture===void 0&&(lt.__webglTexture=n.createTexture(),a.memory.textures++)}if(L.samples>0&&pt(L)===!1){G.__webglMultisampledFramebuffer=n.createFramebuffer(),G.__webglColorRenderbuffer=[],e.bindFramebuffer(n.FRAMEBUFFER,G.__webglMultisampledFramebuffer);for(let Y=0;Y<Q.length;Y++){const K=Q[Y];G.__webglColorRenderbuffer[Y]=n.createRenderbuffer(),n.bindRenderbuffer(n.RENDERBUFFER,G.__webglColorRenderbuffer[Y]);const lt=r.convert(K.format,K.colorSpace),U=r.convert(K.type),J=A(K.internalFormat,lt,U,K.normalized,K.colorSpace,L.isXRRenderTarget===!0),$=le(L);n.renderbufferStorageMultisample(n.RENDERBUFFER,$,J,L.width,L.height),n.framebufferRenderbuffer(n.FRAMEBUFFER,n.COLOR_ATTACHMENT0+Y,n.RENDERBUFFER,G.__webglColorRenderbuffer[Y])}n.bindRenderbuffer(n.RENDERBUFFER,null),L.depthBuffer&&(G.__webglDepthRenderbuffer=n.createRenderbuffer(),Dn(G.__webglDepthRenderbuffer,L,!0)),e.bindFramebuffer(n.FRAMEBUFFER,null)}}if(at){e.bindTexture(n.TEXTURE_CUBE_MAP,nt.__webglTexture),Yt(n.TEXTURE_CUBE_MAP,T);for(let Y=0;Y<6;Y++)if(T.mipmaps.length>0)for(let K=0;K<T.mipmaps.length;K++)ce(G.__webglFramebuffer[Y][K],L,T,n.COLOR_ATTACHMENT0,n.TEXTURE_CUBE_MAP_POSITIVE_X+Y,K);else ce(G.__webglFramebuffer[Y],L,T,n.COLOR_ATTACHMENT0,n.TEXTURE_CUBE_MAP_POSITIVE_X+Y,0);y(T)?v(n.TEXTURE_CUBE_MAP):T.mipmaps.length>0&&n.texParameteri(n.TEXTURE_CUBE_MAP,n.TEXTURE_MAX_LEVEL,T.mipmaps.length-1),e.unbindTexture()}else if(dt){for(let Y=0,K=Q.length;Y<K;Y++){const lt=Q[Y],U=i.get(lt);let J=n.TEXTURE_2D;(L.isWebGL3DRenderTarget||L.isWebGLArrayRenderTarget)&&(J=L.isWebGL3DRenderTarget?n.TEXTURE_3D:n.TEXTURE_2D_ARRAY),e.bindTexture(J,U.__webglTexture),Yt(J,lt),ce(G.__webglFramebuffer,L,lt,n.COLOR_ATTACHMENT0+Y,J,0),y(lt)&&v(J)}e.unbindTexture()}else{let Y=n.TEXTURE_2D;if((L.isWebGL3DRenderTarget||L.isWebGLArrayRenderTarget)&&(Y=L.isWebGL3DRenderTarget?n.TEXTURE_3D:n.TEXTURE_2D_ARRAY),e.bindTexture(Y,nt.__webglTexture),Yt(Y,T),T.mipmaps.length>0)for(let K=0;K<T.mipmaps.length;K++)ce(G.__webglFramebuffer[K],L,T,n.COLOR_ATTACHMENT0,Y,K);else ce(G.__webglFramebuffer,L,T,n.COLOR_ATTACHMENT0,Y,0);y(T)?v(Y):T.mipmaps.length>0&&n.texParameteri(Y,n.TEXTURE_MAX_LEVEL,T.mipmaps.length-1),e.unbindTexture()}L.depthBuffer&&dn(L)}function z(L){const T=L.textures;for(let G=0,nt=T.length;G<nt;G++){const Q=T[G];if(y(Q)&&Q.mipmapsAutoUpdate===!0){const at=M(L),dt=i.get(Q).__webglTexture;e.bindTexture(at,dt),v(at),e.unbindTexture()}}}const mn=[];function oe(L){if(L.samples>0){if(pt(L)===!1){const T=L.textures,G=L.width,nt=L.height;let Q=n.COLOR_BUFFER_BIT;const at=L.stencilBuffer?n.DEPTH_STENCIL_ATTACHMENT:n.DEPTH_ATTACHMENT,dt=i.get(L),Y=T.length>1;if(Y)for(let lt=0;lt<T.length;lt++)e.bindFramebuffer(n.FRAMEBUFFER,dt.__webglMultisampledFramebuffer),n.framebufferRenderbuffer(n.FRAMEBUFFER,n.COLOR_ATTACHMENT0+lt,n.RENDERBUFFER,null),e.bindFramebuffer(n.FRAMEBUFFER,dt.__webglFramebuffer),n.framebufferTexture2D(n.DRAW_FRAMEBUFFER,n.COLOR_ATTACHMENT0+lt,n.TEXTURE_2D,null,0);e.bindFramebuffer(n.READ_FRAMEBUFFER,dt.__webglMultisampledFramebuffer),L.texture.mipmaps.length>0?e.bindFramebuffer(n.DRAW_FRAMEBUFFER,dt.__webglFramebuffer[0]):e.bindFramebuffer(n.DRAW_FRAMEBUFFER,dt.__webglFramebuffer);for(let lt=0;lt<T.length;lt++){if(L.resolveDepthBuffer&&(L.depthBuffer&&(Q|=n.DEPTH_BUFFER_BIT),L.stencilBuffer&&L.resolveStencilBuffer&&(Q|=n.STENCIL_BUFFER_BIT)),Y){n.framebufferRenderbuffer(n.READ_FRAMEBUFFER,n.COLOR_ATTACHMENT0,n.RENDERBUFFER,dt.__webglColorRenderbuffer[lt]);const U=i.get(T[lt]).__webglTexture;n.framebufferTexture2D(n.DRAW_FRAMEBUFFER,n.COLOR_ATTACHMENT0,n.TEXTURE_2D,U,0)}n.blitFramebuffer(0,0,G,nt,0,0,G,nt,Q,n.NEAREST),l===!0&&(mn.length=0,mn.push(n.COLOR_ATTACHMENT0+lt),L.depthBuffer&&L.storeMultisampledDepthBuffer===!1&&mn.push(at),n.invalidateFramebuffer(n.READ_FRAMEBUFFER,mn))}if(e.bindFramebuffer(n.READ_FRAMEBUFFER,null),e.bindFramebuffer(n.DRAW_FRAMEBUFFER,null),Y)for(let lt=0;lt<T.length;lt++){e.bindFramebuffer(n.FRAMEBUFFER,dt.__webglMultisampledFramebuffer),n.framebufferRenderbuffer(n.FRAMEBUFFER,n.COLOR_ATTACHMENT0+lt,n.RENDERBUFFER,dt.__webglColorRenderbuffer[lt]);const U=i.get(T[lt]).__webglTexture;e.bindFramebuffer(n.FRAMEBUFFER,dt.__webglFramebuffer),n.framebufferTexture2D(n.DRAW_FRAMEBUFFER,n.COLOR_ATTACHMENT0+lt,n.TEXTURE_2D,U,0)}e.bindFramebuffer(n.DRAW_FRAMEBUFFER,dt.__webglMultisampledFramebuffer)}else if(L.depthBuffer&&L.storeMultisampledDepthBuffer===!1&&l){const T=L.stencilBuffer?n.DEPTH_STENCIL_ATTACHMENT:n.DEPTH_ATTACHMENT;n.invalidateFramebuffer(n.DRAW_FRAMEBUFFER,[T])}}}function le(L){return Math.min(s.maxSamples,L.samples)}function pt(L){const T=i.get(L);return L.samples>0&&t.has("WEBGL_multisampled_render_to_texture")===!0&&T.__useRenderToTexture!==!1}function Ee(L){const T=a.render.frame;h.get(L)!==T&&(h.set(L,T),L.update())}function Pt(L,T){const G=L.colorSpace,nt=L.format,Q=L.type;return L.isCompressedTexture===!0||L.isVideoTexture===!0||G!==jn&&G!==_i&&(qt.getTransfer(G)===te?(nt!==zn||Q!==ln)&&Lt("WebGLTextures: sRGB encoded textures have to use RGBAFormat and UnsignedByteType."):Zt("WebGLTextures: Unsupported texture color space:",G)),T}function It(L){return typeof HTMLImageElement<"u"&&L instanceof HTMLImageElement?(c.width=L.naturalWidth||L.width,c.height=L.naturalHeight||L.height):typeof VideoFrame<"u"&&L instanceof VideoFrame?(c.width=L.displayWidth,c.height=L.displayHeight):(c.width=L.width,c.height=L.height),c}this.allocateTextureUnit=Dt,this.resetTextureUnits=j,this.getTextureUnits=tt,this.setTextureUnits=St,this.setTexture2D=ht,this.setTexture2DArray=vt,this.setTexture3D=At,this.setTextureCube=mt,this.rebindTextures=fn,this.setupRenderTarget=pn,this.updateRenderTargetMipmap=z,this.updateMultisampleRenderTarget=oe,this.setupDepthRenderbuffer=dn,this.setupFrameBufferTexture=ce,this.useMultisampledRTT=pt,this.dispose=B}function bx(n,t){function e(i,s=_i){let r;const a=qt.getTransfer(s);if(i===ln)return n.UNSIGNED_BYTE;if(i===zl)return n.UNSIGNED_SHORT_4_4_4_4;if(i===kl)return n.UNSIGNED_SHORT_5_5_5_1;if(i===Gh)return n.UNSIGNED_INT_5_9_9_9_REV;if(i===Vh)return n.UNSIGNED_INT_10F_11F_11F_REV;if(i===kh)return n.BYTE;if(i===Hh)return n.SHORT;if(i===Xs)return n.UNSIGNED_SHORT;if(i===Bl)return n.INT;if(i===Hn)return n.UNSIGNED_INT;if(i===Bn)return n.FLOAT;if(i===Gn)return n.HALF_FLOAT;if(i===Wh)return n.ALPHA;if(i===Xh)return n.RGB;if(i===zn)return n.RGBA;if(i===Si)return n.DEPTH_COMPONENT;if(i===xi)return n.DEPTH_STENCIL;if(i===qh)return n.RED;if(i===Hl)return n.RED_INTEGER;if(i===Oi)return n.RG;if(i===Gl)return n.RG_INTEGER;if(i===Vl)return n.RGBA_INTEGER;if(i===ta||i===ea||i===na||i===ia)if(a===te)if(r=t.get("WEBGL_compressed_texture_s3tc_srgb"),r!==null){if(i===ta)return r.COMPRESSED_SRGB_S3TC_DXT1_EXT;if(i===ea)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT1_EXT;if(i===na)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT3_EXT;if(i===ia)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT5_EXT}else return null;else if(r=t.get("WEBGL_compressed_texture_s3tc"),r!==null){if(i===ta)return r.COMPRESSED_RGB_S3TC_DXT1_EXT;if(i===ea)return r.COMPRESSED_RGBA_S3TC_DXT1_EXT;if(i===na)return r.COMPRESSED_RGBA_S3TC_DXT3_EXT;if(i===ia)return r.COMPRESSED_RGBA_S3TC_DXT5_EXT}else return null;if(i===zo||i===ko||i===Ho||i===Go)if(r=t.get("WEBGL_compressed_texture_pvrtc"),r!==null){if(i===zo)return r.COMPRESSED_RGB_PVRTC_4BPPV1_IMG;if(i===ko)return r.COMPRESSED_RGB_PVRTC_2BPPV1_IMG;if(i===Ho)return r.COMPRESSED_RGBA_PVRTC_4BPPV1_IMG;if(i===Go)return r.COMPRESSED_RGBA_PVRTC_2BPPV1_IMG}else return null;if(i===Vo||i===Wo||i===Xo||i===qo||i===$o||i===fa||i===Yo)if(r=t.get("WEBGL_compressed_texture_etc"),r!==null){if(i===Vo||i===Wo)return a===te?r.COMPRESSED_SRGB8_ETC2:r.COMPRESSED_RGB8_ETC2;if(i===Xo)return a===te?r.COMPRESSED_SRGB8_ALPHA8_ETC2_EAC:r.COMPRESSED_RGBA8_ETC2_EAC;if(i===qo)return r.COMPRESSED_R11_EAC;if(i===$o)return r.COMPRESSED_SIGNED_R11_EAC;if(i===fa)return r.COMPRESSED_RG11_EAC;if(i===Yo)return r.COMPRESSED_SIGNED_RG11_EAC}else return null;if(i===Ko||i===Zo||i===Jo||i===Qo||i===jo||i===tl||i===el||i===nl||i===il||i===sl||i===rl||i===al||i===ol||i===ll)if(r=t.get("WEBGL_compressed_texture_astc"),r!==null){if(i===Ko)return a===te?r.COMPRESSED_SRGB8_ALPHA8_ASTC_4x4_KHR:r.COMPRESSED_RGBA_ASTC_4x4_KHR;if(i===Zo)return a===te?r.COMPRESSED_SRGB8_ALPHA8_ASTC_5x4_KHR:r.COMPRESSED_RGBA_ASTC_5x4_KHR;if(i===Jo)return a===te?r.COMPRESSED_SRGB8_ALPHA8_ASTC_5x5_KHR:r.COMPRESSED_RGBA_ASTC_5x5_KHR;if(i===Qo)return a===te?r.COMPRESSED_SRGB8_ALPHA8_ASTC_6x5_KHR:r.COMPRESSED_RGBA_ASTC_6x5_KHR;if(i===jo)return a===te?r.COMPRESSED_SRGB8_ALPHA8_ASTC_6x6_KHR:r.COMPRESSED_RGBA_ASTC_6x6_KHR;if(i===tl)return a===te?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x5_KHR:r.COMPRESSED_RGBA_ASTC_8x5_KHR;if(i===el)return a===te?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x6_KHR:r.COMPRESSED_RGBA_ASTC_8x6_KHR;if(i===nl)return a===te?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x8_KHR:r.COMPRESSED_RGBA_ASTC_8x8_KHR;if(i===il)return a===te?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x5_KHR:r.COMPRESSED_RGBA_ASTC_10x5_KHR;if(i===sl)return a===te?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x6_KHR:r.COMPRESSED_RGBA_ASTC_10x6_KHR;if(i===rl)return a===te?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x8_KHR:r.COMPRESSED_RGBA_ASTC_10x8_KHR;if(i===al)return a===te?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x10_KHR:r.COMPRESSED_RGBA_ASTC_10x10_KHR;if(i===ol)return a===te?r.COMPRESSED_SRGB8_ALPHA8_ASTC_12x10_KHR:r.COMPRESSED_RGBA_ASTC_12x10_KHR;if(i===ll)return a===te?r.COMPRESSED_SRGB8_ALPHA8_ASTC_12x12_KHR:r.COMPRESSED_RGBA_ASTC_12x12_KHR}else return null;if(i===cl||i===ul||i===hl)if(r=t.get("EXT_texture_compression_bptc"),r!==null){if(i===cl)return a===te?r.COMPRESSED_SRGB_ALPHA_BPTC_UNORM_EXT:r.COMPRESSED_RGBA_BPTC_UNORM_EXT;if(i===ul)return r.COMPRESSED_RGB_BPTC_SIGNED_FLOAT_EXT;if(i===hl)return r.COMPRESSED_RGB_BPTC_UNSIGNED_FLOAT_EXT}else return null;if(i===dl||i===fl||i===pa||i===pl)if(r=t.get("EXT_texture_compression_rgtc"),r!==null){if(i===dl)return r.COMPRESSED_RED_RGTC1_EXT;if(i===fl)return r.COMPRESSED_SIGNED_RED_RGTC1_EXT;if(i===pa)return r.COMPRESSED_RED_GREEN_RGTC2_EXT;if(i===pl)return r.COMPRESSED_SIGNED_RED_GREEN_RGTC2_EXT}else return null;return i===gs?n.UNSIGNED_INT_24_8:n[i]!==void 0?n[i]:null}return{convert:e}}const Tx=`
void main() {

	gl_Position = vec4( position, 1.0 );

}`,wx=`
uniform sampler2DArray depthColor;
uniform float depthWidth;
uniform float depthHeight;

void main() {

	vec2 coord = vec2( gl_FragCoord.x / depthWidth, gl_FragCoord.y / depthHeight );

	if ( coord.x >= 1.0 ) {

		gl_FragDepth = texture( depthColor, vec3( coord.x - 1.0, coord.y, 1 ) ).r;

	} else {

		gl_FragDepth = texture( depthColor, vec3( coord.x, coord.y, 0 ) ).r;

	}

}`;class Ax{constructor(){this.texture=null,this.mesh=null,this.depthNear=0,this.depthFar=0}init(t,e){if(this.texture===null){const i=new ld(t.texture);(t.depthNear!==e.depthNear||t.depthFar!==e.depthFar)&&(this.depthNear=t.depthNear,this.depthFar=t.depthFar),this.texture=i}}getMesh(t){if(this.texture!==null&&this.mesh===null){const e=t.cameras[0].viewport,i=new ii({vertexShader:Tx,fragmentShader:wx,uniforms:{depthColor:{value:this.texture},depthWidth:{value:e.z},depthHeight:{value:e.w}}});this.mesh=new Sn(new Ta(20,20),i)}return this.mesh}reset(){this.texture=null,this.mesh=null}getDepthTexture(){return this.texture}}class Rx extends Ei{constructor(t,e){super();const i=this;let s=null,r=1,a=null,o="local-floor",l=1,c=null,h=null,d=null,u=null,f=null,g=null;const S=typeof XRWebGLBinding<"u",m=new Ax,p={},x=e.getContextAttributes();let y=null,v=null;const M=[],A=[],_=new Rt;let E=null,D=null;const w=new Cn;w.viewport=new fe;const P=new Cn;P.viewport=new fe;const N=[w,P],F=new Fp;let C=null,B=null;this.cameraAutoUpdate=!0,this.enabled=!1,this.isPresenting=!1,this.getController=function(Z){let ht=M[Z];return ht===void 0&&(ht=new Wa,M[Z]=ht),ht.getTargetRaySpace()},this.getControllerGrip=function(Z){let ht=M[Z];return ht===void 0&&(ht=new Wa,M[Z]=ht),ht.getGripSpace()},this.getHand=function(Z){let ht=M[Z];return ht===void 0&&(ht=new Wa,M[Z]=ht),ht.getHandSpace()};function W(Z){const ht=A.indexOf(Z.inputSource);if(ht===-1)return;const vt=M[ht];vt!==void 0&&(vt.update(Z.inputSource,Z.frame,c||a),vt.dispatchEvent({type:Z.type,data:Z.inputSource}))}function k(){s.removeEventListener("select",W),s.removeEventListener("selectstart",W),s.removeEventListener("selectend",W),s.removeEventListener("squeeze",W),s.removeEventListener("squeezestart",W),s.removeEventListener("squeezeend",W),s.removeEventListener("end",k),s.removeEventListener("inputsourceschange",et);for(let Z=0;Z<M.length;Z++){const ht=A[Z];ht!==null&&(A[Z]=null,M[Z].disconnect(ht))}C=null,B=null,m.reset();for(const Z in p)delete p[Z];if(t.setRenderTarget(y),f=null,u=null,d=null,s=null,v=null,Dt.stop(),i.isPresenting=!1,t.setPixelRatio(E),t.setSize(_.width,_.height,!1),D!==null){const Z=D.camera;Z.fov=D.fov,Z.zoom=D.zoom,Z.updateProjectionMatrix(),D=null}i.dispatchEvent({type:"sessionend"})}this.setFramebufferScaleFactor=function(Z){r=Z,i.isPresenting===!0&&Lt("WebXRManager: Cannot change framebuffer scale while presenting.")},this.setReferenceSpaceType=function(Z){o=Z,i.isPresenting===!0&&Lt("WebXRManager: Cannot change reference space type while presenting.")},this.getReferenceSpace=function(){return c||a},this.setReferenceSpace=function(Z){c=Z},this.getBaseLayer=function(){return u!==null?u:f},this.getBinding=function(){return d===null&&S&&(d=new XRWebGLBinding(s,e)),d},this.getFrame=function(){return g},this.getSession=function(){return s},this.setSession=async function(Z){if(s=Z,s!==null){if(y=t.getRenderTarget(),s.addEventListener("select",W),s.addEventListener("selectstart",W),s.addEventListener("selectend",W),s.addEventListener("squeeze",W),s.addEventListener("squeezestart",W),s.addEventListener("squeezeend",W),s.addEventListener("end",k),s.addEventListener("inputsourceschange",et),x.xrCompatible!==!0&&await e.makeXRCompatible(),E=t.getPixelRatio(),t.getSize(_),S&&"createProjectionLayer"in XRWebGLBinding.prototype){let vt=null,At=null,mt=null;x.depth&&(mt=x.stencil?e.DEPTH24_STENCIL8:e.DEPTH_COMPONENT24,vt=x.stencil?xi:Si,At=x.stencil?gs:Hn);const Nt={colorFormat:e.RGBA8,depthFormat:mt,scaleFactor:r};d=this.getBinding(),u=d.createProjectionLayer(Nt),s.updateRenderState({layers:[u]}),t.setPixelRatio(1),t.setSize(u.textureWidth,u.textureHeight,!1),v=new kn(u.textureWidth,u.textureHeight,{format:zn,type:ln,depthTexture:new xs(u.textureWidth,u.textureHeight,At,void 0,void 0,void 0,void 0,void 0,void 0,vt),stencilBuffer:x.stencil,colorSpace:t.outputColorSpace,samples:x.antialias?4:0,resolveDepthBuffer:u.ignoreDepthValues===!1,resolveStencilBuffer:u.ignoreDepthValues===!1,storeMultisampledDepthBuffer:u.ignoreDepthValues===!1,storeMultisampledStencilBuffer:u.ignoreDepthValues===!1})}else{const vt={antialias:x.antialias,alpha:!0,depth:x.depth,stencil:x.stencil,framebufferScaleFactor:r};f=new XRWebGLLayer(s,e,vt),s.updateRenderState({baseLayer:f}),t.setPixelRatio(1),t.setSize(f.framebufferWidth,f.framebufferHeight,!1),v=new kn(f.framebufferWidth,f.framebufferHeight,{format:zn,type:ln,colorSpace:t.outputColorSpace,stencilBuffer:x.stencil,resolveDepthBuffer:f.ignoreDepthValues===!1,resolveStencilBuffer:f.ignoreDepthValues===!1,storeMultisampledDepthBuffer:f.ignoreDepthValues===!1,storeMultisampledStencilBuffer:f.ignoreDepthValues===!1})}v.isXRRenderTarget=!0,this.setFoveation(l),c=null,a=await s.requestReferenceSpace(o),Dt.setContext(s),Dt.start(),i.isPresenting=!0,i.dispatchEvent({type:"sessionstart"})}},this.getEnvironmentBlendMode=function(){if(s!==null)return s.environmentBlendMode},this.getDepthTexture=function(){return m.getDepthTexture()};function et(Z){for(let ht=0;ht<Z.removed.length;ht++){const vt=Z.removed[ht],At=A.indexOf(vt);At>=0&&(A[At]=null,M[At].disconnect(vt))}for(let ht=0;ht<Z.added.length;ht++){const vt=Z.added[ht];let At=A.indexOf(vt);if(At===-1){for(let Nt=0;Nt<M.length;Nt++)if(Nt>=A.length){A.push(vt),At=Nt;break}else if(A[Nt]===null){A[Nt]=vt,At=Nt;break}if(At===-1)break}const mt=M[At];mt&&mt.connect(vt)}}function q(Z,ht){ht===null?Z.matrixWorld.copy(Z.matrix):Z.matrixWorld.multiplyMatrices(ht.matrixWorld,Z.matrix),Z.matrixWorldInverse.copy(Z.matrixWorld).invert()}this.updateCamera=function(Z){if(s===null)return;let ht=Z.near,vt=Z.far;m.texture!==null&&(m.depthNear>0&&(ht=m.depthNear),m.depthFar>0&&(vt=m.depthFar)),F.near=P.near=w.near=ht,F.far=P.far=w.far=vt,(C!==F.near||B!==F.far)&&(s.updateRenderState({depthNear:F.near,depthFar:F.far}),C=F.near,B=F.far),F.layers.mask=Z.layers.mask|6,w.layers.mask=F.layers.mask&-5,P.layers.mask=F.layers.mask&-3;const At=Z.parent,mt=F.cameras;q(F,At);for(let Nt=0;Nt<mt.length;Nt++)q(mt[Nt],At);F.projectionMatrix.copy(w.projectionMatrix),F.projectionMatrixInverse.copy(w.projectionMatrixInverse),D===null&&Z.isPerspectiveCamera&&(D={camera:Z,fov:Z.fov,zoom:Z.zoom}),j(Z,F,At)};function j(Z,ht,vt){vt===null?Z.matrix.copy(ht.matrixWorld):(Z.matrix.copy(vt.matrixWorld),Z.matrix.invert(),Z.matrix.multiply(ht.matrixWorld)),Z.matrix.decompose(Z.position,Z.quaternion,Z.scale),Z.updateMatrixWorld(!0),Z.projectionMatrix.copy(ht.projectionMatrix),Z.projectionMatrixInverse.copy(ht.projectionMatrixInverse),Z.isPerspectiveCamera&&(Z.fov=_l*2*Math.atan(1/Z.projectionMatrix.elements[5]),Z.zoom=1)}this.getCamera=function(){return F},this.getFoveation=function(){if(!(u===null&&f===null))return l},this.setFoveation=function(Z){l=Z,u!==null&&(u.fixedFoveation=Z),f!==null&&f.fixedFoveation!==void 0&&(f.fixedFoveation=Z)},this.hasDepthSensing=function(){return m.texture!==null},this.getDepthSensingMesh=function(){return m.getMesh(F)},this.getCameraTexture=function(Z){return p[Z]};let tt=null;function St(Z,ht){if(h=ht.getViewerPose(c||a),g=ht,h!==null){const vt=h.views;f!==null&&(t.setRenderTargetFramebuffer(v,f.framebuffer),t.setRenderTarget(v));let At=!1;vt.length!==F.cameras.length&&(F.cameras.length=0,At=!0);for(let Ct=0;Ct<vt.length;Ct++){const Yt=vt[Ct];let ne=null;if(f!==null)ne=f.getViewport(Yt);else{const Oe=d.getViewSubImage(u,Yt);ne=Oe.viewport,Ct===0&&(t.setRenderTargetTextures(v,Oe.colorTexture,Oe.depthStencilTexture),t.setRenderTarget(v))}let Gt=N[Ct];Gt===void 0&&(Gt=new Cn,Gt.layers.enable(Ct),Gt.viewport=new fe,N[Ct]=Gt),Gt.matrix.fromArray(Yt.transform.matrix),Gt.matrix.decompose(Gt.position,Gt.quaternion,Gt.scale),Gt.projectionMatrix.fromArray(Yt.projectionMatrix),Gt.projectionMatrixInverse.copy(Gt.projectionMatrix).invert(),Gt.viewport.set(ne.x,ne.y,ne.width,ne.height),Ct===0&&(F.matrix.copy(Gt.matrix),F.matrix.decompose(F.position,F.quaternion,F.scale)),At===!0&&F.cameras.push(Gt)}const mt=s.enabledFeatures;if(mt&&mt.includes("depth-sensing")&&s.depthUsage=="gpu-optimized"&&S){d=i.getBinding();const Ct=d.getDepthInformation(vt[0]);Ct&&Ct.isValid&&Ct.texture&&m.init(Ct,s.renderState)}if(mt&&mt.includes("camera-access")&&S){t.state.unbindTexture(),d=i.getBinding();for(let Ct=0;Ct<vt.length;Ct++){const Yt=vt[Ct].camera;if(Yt){let ne=p[Yt];ne||(ne=new ld,p[Yt]=ne);const Gt=d.getCameraImage(Yt);ne.sourceTexture=Gt}}}}for(let vt=0;vt<M.length;vt++){const At=A[vt],mt=M[vt];At!==null&&mt!==void 0&&mt.update(At,ht,c||a)}tt&&tt(Z,ht),ht.detectedPlanes&&i.dispatchEvent({type:"planesdetected",data:ht}),g=null}const Dt=new fd;Dt.setAnimationLoop(St),this.setAnimationLoop=function(Z){tt=Z},this.dispose=function(){}}}const Cx=new $t,Ed=new Ft;Ed.set(-1,0,0,0,1,0,0,0,1);function Px(n,t){function e(m,p){m.matrixAutoUpdate===!0&&m.updateMatrix(),p.value.copy(m.matrix)}function i(m,p){p.color.getRGB(m.fogColor.value,cd(n)),p.isFog?(m.fogNear.value=p.near,m.fogFar.value=p.far):p.isFogExp2&&(m.fogDensity.value=p.density)}function s(m,p,x,y,v){p.isNodeMaterial?p.uniformsNeedUpdate=!1:p.isMeshBasicMaterial?r(m,p):p.isMeshLambertMaterial?(r(m,p),p.envMap&&(m.envMapIntensity.value=p.envMapIntensity)):p.isMeshToonMaterial?(r(m,p),d(m,p)):p.isMeshPhongMaterial?(r(m,p),h(m,p),p.envMap&&(m.envMapIntensity.value=p.envMapIntensity)):p.isMeshStandardMaterial?(r(m,p),u(m,p),p.isMeshPhysicalMaterial&&f(m,p,v)):p.isMeshMatcapMaterial?(r(m,p),g(m,p)):p.isMeshDepthMaterial?r(m,p):p.isMeshDistanceMaterial?(r(m,p),S(m,p)):p.isMeshNormalMaterial?r(m,p):p.isLineBasicMaterial?(a(m,p),p.isLineDashedMaterial&&o(m,p)):p.isPointsMaterial?l(m,p,x,y):p.isSpriteMaterial?c(m,p):p.isShadowMaterial?(m.color.value.copy(p.color),m.opacity.value=p.opacity):p.isShaderMaterial&&(p.uniformsNeedUpdate=!1)}function r(m,p){m.opacity.value=p.opacity,p.color&&m.diffuse.value.copy(p.color),p.emissive&&m.emissive.value.copy(p.emissive).multiplyScalar(p.emissiveIntensity),p.map&&(m.map.value=p.map,e(p.map,m.mapTransform)),p.alphaMap&&(m.alphaMap.value=p.alphaMap,e(p.alphaMap,m.alphaMapTransform)),p.bumpMap&&(m.bumpMap.value=p.bumpMap,e(p.bumpMap,m.bumpMapTransform),m.bumpScale.value=p.bumpScale,p.side===Qe&&(m.bumpScale.value*=-1)),p.normalMap&&(m.normalMap.value=p.normalMap,e(p.normalMap,m.normalMapTransform),m.normalScale.value.copy(p.normalScale),p.side===Qe&&m.normalScale.value.negate()),p.displacementMap&&(m.displacementMap.value=p.displacementMap,e(p.displacementMap,m.displacementMapTransform),m.displacementScale.value=p.displacementScale,m.displacementBias.value=p.displacementBias),p.emissiveMap&&(m.emissiveMap.value=p.emissiveMap,e(p.emissiveMap,m.emissiveMapTransform)),p.specularMap&&(m.specularMap.value=p.specularMap,e(p.specularMap,m.specularMapTransform)),p.alphaTest>0&&(m.alphaTest.value=p.alphaTest);const x=t.get(p),y=x.envMap,v=x.envMapRotation;y&&(m.envMap.value=y,m.envMapRotation.value.setFromMatrix4(Cx.makeRotationFromEuler(v)).transpose(),y.isCubeTexture&&y.isRenderTargetTexture===!1&&m.envMapRotation.value.premultiply(Ed),m.reflectivity.value=p.reflectivity,m.ior.value=p.ior,m.refractionRatio.value=p.refractionRatio),p.lightMap&&(m.lightMap.value=p.lightMap,m.lightMapIntensity.value=p.lightMapIntensity,e(p.lightMap,m.lightMapTransform)),p.aoMap&&(m.aoMap.value=p.aoMap,m.aoMapIntensity.value=p.aoMapIntensity,e(p.aoMap,m.aoMapTransform))}function a(m,p){m.diffuse.value.copy(p.color),m.opacity.value=p.opacity,p.map&&(m.map.value=p.map,e(p.map,m.mapTransform))}function o(m,p){m.dashSize.value=p.dashSize,m.totalSize.value=p.dashSize+p.gapSize,m.scale.value=p.scale}function l(m,p,x,y){m.diffuse.value.copy(p.color),m.opacity.value=p.opacity,m.size.value=p.size*x,m.scale.value=y*.5,p.map&&(m.map.value=p.map,e(p.map,m.uvTransform)),p.alphaMap&&(m.alphaMap.value=p.alphaMap,e(p.alphaMap,m.alphaMapTransform)),p.alphaTest>0&&(m.alphaTest.value=p.alphaTest)}function c(m,p){m.diffuse.value.copy(p.color),m.opacity.value=p.opacity,m.rotation.value=p.rotation,p.map&&(m.map.value=p.map,e(p.map,m.mapTransform)),p.alphaMap&&(m.alphaMap.value=p.alphaMap,e(p.alphaMap,m.alphaMapTransform)),p.alphaTest>0&&(m.alphaTest.value=p.alphaTest)}function h(m,p){m.specular.value.copy(p.specular),m.shininess.value=Math.max(p.shininess,1e-4)}function d(m,p){p.gradientMap&&(m.gradientMap.value=p.gradientMap)}function u(m,p){m.metalness.value=p.metalness,p.metalnessMap&&(m.metalnessMap.value=p.metalnessMap,e(p.metalnessMap,m.metalnessMapTransform)),m.roughness.value=p.roughness,p.roughnessMap&&(m.roughnessMap.value=p.roughnessMap,e(p.roughnessMap,m.roughnessMapTransform)),p.envMap&&(m.envMapIntensity.value=p.envMapIntensity)}function f(m,p,x){m.ior.value=p.ior,p.diffuseRoughness>0&&(m.diffuseRoughness.value=p.diffuseRoughness,p.diffuseRoughnessMap&&(m.diffuseRoughnessMap.value=p.diffuseRoughnessMap,e(p.diffuseRoughnessMap,m.diffuseRoughnessMapTransform))),p.sheen>0&&(m.sheenColor.value.copy(p.sheenColor).multiplyScalar(p.sheen),m.sheenRoughness.value=p.sheenRoughness,p.sheenColorMap&&(m.sheenColorMap.value=p.sheenColorMap,e(p.sheenColorMap,m.sheenColorMapTransform)),p.sheenRoughnessMap&&(m.sheenRoughnessMap.value=p.sheenRoughnessMap,e(p.sheenRoughnessMap,m.sheenRoughnessMapTransform))),p.clearcoat>0&&(m.clearcoat.value=p.clearcoat,m.clearcoatRoughness.value=p.clearcoatRoughness,p.clearcoatMap&&(m.clearcoatMap.value=p.clearcoatMap,e(p.clearcoatMap,m.clearcoatMapTransform)),p.clearcoatRoughnessMap&&(m.clearcoatRoughnessMap.value=p.clearcoatRoughnessMap,e(p.clearcoatRoughnessMap,m.clearcoatRoughnessMapTransform)),p.clearcoatNormalMap&&(m.clearcoatNormalMap.value=p.clearcoatNormalMap,e(p.clearcoatNormalMap,m.clearcoatNormalMapTransform),m.clearcoatNormalScale.value.copy(p.clearcoatNormalScale),p.side===Qe&&m.clearcoatNormalScale.value.negate())),p.dispersion>0&&(m.dispersion.value=p.dispersion),p.retroreflectivity>0&&(m.retroreflectivity.value=p.retroreflectivity),p.iridescence>0&&(m.iridescence.value=p.iridescence,m.iridescenceIOR.value=p.iridescenceIOR,m.iridescenceThicknessMinimum.value=p.iridescenceThicknessMinimum,m.iridescenceThicknessMaximum.value=p.iridescenceThicknessMaximum,p.iridescenceMap&&(m.iridescenceMap.value=p.iridescenceMap,e(p.iridescenceMap,m.iridescenceMapTransform)),p.iridescenceThicknessMap&&(m.iridescenceThicknessMap.value=p.iridescenceThicknessMap,e(p.iridescenceThicknessMap,m.iridescenceThicknessMapTransform))),p.transmission>0&&(m.transmission.value=p.transmission,m.transmissionSamplerMap.value=x.texture,m.transmissionSamplerSize.value.set(x.width,x.height),p.transmissionMap&&(m.transmissionMap.value=p.transmissionMap,e(p.transmissionMap,m.transmissionMapTransform)),m.thickness.value=p.thickness,p.thicknessMap&&(m.thicknessMap.value=p.thicknessMap,e(p.thicknessMap,m.thicknessMapTransform)),m.attenuationDistance.value=p.attenuationDistance,m.attenuationColor.value.copy(p.attenuationColor)),p.anisotropy>0&&(m.anisotropyVector.value.set(p.anisotropy*Math.cos(p.anisotropyRotation),p.anisotropy*Math.sin(p.anisotropyRotation)),p.anisotropyMap&&(m.anisotropyMap.value=p.anisotropyMap,e(p.anisotropyMap,m.anisotropyMapTransform))),m.specularIntensity.value=p.specularIntensity,m.specularColor.value.copy(p.specularColor),p.specularColorMap&&(m.specularColorMap.value=p.specularColorMap,e(p.specularColorMap,m.specularColorMapTransform)),p.specularIntensityMap&&(m.specularIntensityMap.value=p.specularIntensityMap,e(p.specularIntensityMap,m.specularIntensityMapTransform))}function g(m,p){p.matcap&&(m.matcap.value=p.matcap)}function S(m,p){const x=t.get(p).light;m.referencePosition.value.setFromMatrixPosition(x.matrixWorld),m.nearDistance.value=x.shadow.camera.near,m.farDistance.value=x.shadow.camera.far}return{refreshFogUniforms:i,refreshMaterialUniforms:s}}function Lx(n,t,e,i){let s={},r={};function a(x,y){const v=y.program;i.uniformBlockBinding(x,v,s[x.id])}function o(x,y){let v=s[x.id];v===void 0&&(g(x),v=l(x),s[x.id]=v,x.addEventListener("dispose",m));const M=y.program;i.updateUBOMapping(x,M);const A=t.render.frame;r[x.id]!==A&&(c(x),r[x.id]=A)}function l(x){const y=n.createBuffer(),v=x.__size,M=x.usage;return n.bindBuffer(n.UNIFORM_BUFFER,y),n.bufferData(n.UNIFORM_BUFFER,v,M),n.bindBuffer(n.UNIFORM_BUFFER,null),y}function c(x){const y=s[x.id],v=x.uniforms,M=x.__cache;n.bindBuffer(n.UNIFORM_BUFFER,y);for(let A=0,_=v.length;A<_;A++){const E=v[A];if(Array.isArray(E))for(let D=0,w=E.length;D<w;D++)h(E[D],A,D,M);else h(E,A,0,M)}n.bindBuffer(n.UNIFORM_BUFFER,null)}function h(x,y,v,M){if(u(x,y,v,M)===!0){const A=x.__offset,_=x.value;if(Array.isArray(_)){let E=0;for(let D=0;D<_.length;D++){const w=_[D],P=S(w,!0);d(w,x.__data,E),E+=P.storage/Float32Array.BYTES_PER_ELEMENT}}else d(_,x.__data,0);n.bufferSubData(n.UNIFORM_BUFFER,A,x.__data)}}function d(x,y,v){typeof x=="number"||typeof x=="boolean"?y[v]=x:x.isMatrix3?(y[v]=x.elements[0],y[v+1]=x.elements[1],y[v+2]=x.elements[2],y[v+3]=0,y[v+4]=x.elements[3],y[v+5]=x.elements[4],y[v+6]=x.elements[5],y[v+7]=0,y[v+8]=x.elements[6],y[v+9]=x.elements[7],y[v+10]=x.elements[8],y[v+11]=0):ArrayBuffer.isView(x)?y.set(x.subarray(0,y.length-v),v):x.toArray(y,v)}function u(x,y,v,M){const A=x.value,_=y+"_"+v;if(Array.isArray(A)){M[_]===void 0&&(M[_]=[]);const E=M[_];let D=!1;for(let w=0;w<A.length;w++)f(A[w],E,w)===!0&&(D=!0);return D}return f(A,M,_)}function f(x,y,v){if(y[v]===void 0)return typeof x=="number"||typeof x=="boolean"?y[v]=x:ArrayBuffer.isView(x)?y[v]=x.slice():y[v]=x.clone(),!0;{const M=y[v];if(typeof x=="number"||typeof x=="boolean"){if(M!==x)return y[v]=x,!0}else{if(ArrayBuffer.isView(x))return!0;if(M.equals(x)===!1)return M.copy(x),!0}}return!1}function g(x){const y=x.uniforms;let v=0;const M=16;for(let _=0,E=y.length;_<E;_++){const D=Array.isArray(y[_])?y[_]:[y[_]];for(let w=0,P=D.length;w<P;w++){const N=D[w],F=Array.isArray(N.value)?N.value:[N.value],C=Array.isArray(y[_])||Array.isArray(N.value);let B=v;for(let k=0,et=F.length;k<et;k++){const q=F[k],j=S(q,C),tt=v%M,St=tt%j.boundary,Dt=tt+St;v+=St,Dt!==0&&M-Dt<j.storage&&(v+=M-Dt),k===0&&(B=v),v+=j.storage}const W=N.type==="int"?Int32Array:N.type==="uint"?Uint32Array:Float32Array;N.__data=new W((v-B)/Float32Array.BYTES_PER_ELEMENT),N.__offset=B}}const A=v%M;return A>0&&(v+=M-A),x.__size=v,x.__cache={},this}function S(x,y){const v={boundary:0,storage:0};return typeof x=="number"||typeof x=="boolean"?(v.boundary=4,v.storage=4):x.isVector2?(v.boundary=8,v.storage=8):x.isVector3||x.isColor?(v.boundary=16,v.storage=12):x.isVector4?(v.boundary=16,v.storage=16):x.isMatrix3?(v.boundary=16,v.storage=48):x.isMatrix4?(v.boundary=16,v.storage=64):x.isTexture?Lt("WebGLRenderer: Texture samplers can not be part of an uniforms group."):ArrayBuffer.isView(x)?(v.boundary=16,v.storage=x.byteLength):Lt("WebGLRenderer: Unsupported uniform value type.",x),y===!0&&(v.boundary=16,v.storage=Math.ceil(v.storage/16)*16),v}function m(x){const y=x.target;y.removeEventListener("dispose",m),n.deleteBuffer(s[y.id]),delete s[y.id],delete r[y.id]}function p(){for(const x in s)n.deleteBuffer(s[x]);s={},r={}}return{bind:a,update:o,dispose:p}}const Dx=new Uint16Array([12469,15057,12620,14925,13266,14620,13807,14376,14323,13990,14545,13625,14713,13328,14840,12882,14931,12528,14996,12233,15039,11829,15066,11525,15080,11295,15085,10976,15082,10705,15073,10495,13880,14564,13898,14542,13977,14430,14158,14124,14393,13732,14556,13410,14702,12996,14814,12596,14891,12291,14937,11834,14957,11489,14958,11194,14943,10803,14921,10506,14893,10278,14858,9960,14484,14039,14487,14025,14499,13941,14524,13740,14574,13468,14654,13106,14743,12678,14818,12344,14867,11893,14889,11509,14893,11180,14881,10751,14852,10428,14812,10128,14765,9754,14712,9466,14764,13480,14764,13475,14766,13440,14766,13347,14769,13070,14786,12713,14816,12387,14844,11957,14860,11549,14868,11215,14855,10751,14825,10403,14782,10044,14729,9651,14666,9352,14599,9029,14967,12835,14966,12831,14963,12804,14954,12723,14936,12564,14917,12347,14900,11958,14886,11569,14878,11247,14859,10765,14828,10401,14784,10011,14727,9600,14660,9289,14586,8893,14508,8533,15111,12234,15110,12234,15104,12216,15092,12156,15067,12010,15028,11776,14981,11500,14942,11205,14902,10752,14861,10393,14812,9991,14752,9570,14682,9252,14603,8808,14519,8445,14431,8145,15209,11449,15208,11451,15202,11451,15190,11438,15163,11384,15117,11274,15055,10979,14994,10648,14932,10343,14871,9936,14803,9532,14729,9218,14645,8742,14556,8381,14461,8020,14365,7603,15273,10603,15272,10607,15267,10619,15256,10631,15231,10614,15182,10535,15118,10389,15042,10167,14963,9787,14883,9447,14800,9115,14710,8665,14615,8318,14514,7911,14411,7507,14279,7198,15314,9675,15313,9683,15309,9712,15298,9759,15277,9797,15229,9773,15166,9668,15084,9487,14995,9274,14898,8910,14800,8539,14697,8234,14590,7790,14479,7409,14367,7067,14178,6621,15337,8619,15337,8631,15333,8677,15325,8769,15305,8871,15264,8940,15202,8909,15119,8775,15022,8565,14916,8328,14804,8009,14688,7614,14569,7287,14448,6888,14321,6483,14088,6171,15350,7402,15350,7419,15347,7480,15340,7613,15322,7804,15287,7973,15229,8057,15148,8012,15046,7846,14933,7611,14810,7357,14682,7069,14552,6656,14421,6316,14251,5948,14007,5528,15356,5942,15356,5977,15353,6119,15348,6294,15332,6551,15302,6824,15249,7044,15171,7122,15070,7050,14949,6861,14818,6611,14679,6349,14538,6067,14398,5651,14189,5311,13935,4958,15359,4123,15359,4153,15356,4296,15353,4646,15338,5160,15311,5508,15263,5829,15188,6042,15088,6094,14966,6001,14826,5796,14678,5543,14527,5287,14377,4985,14133,4586,13869,4257,15360,1563,15360,1642,15358,2076,15354,2636,15341,3350,15317,4019,15273,4429,15203,4732,15105,4911,14981,4932,14836,4818,14679,4621,14517,4386,14359,4156,14083,3795,13808,3437,15360,122,15360,137,15358,285,15355,636,15344,1274,15322,2177,15281,2765,15215,3223,15120,3451,14995,3569,14846,3567,14681,3466,14511,3305,14344,3121,14037,2800,13753,2467,15360,0,15360,1,15359,21,15355,89,15346,253,15325,479,15287,796,15225,1148,15133,1492,15008,1749,14856,1882,14685,1886,14506,1783,14324,1608,13996,1398,13702,1183]);let In=null;function Nx(){return In===null&&(In=new sd(Dx,16,16,Oi,Gn),In.name="DFG_LUT",In.minFilter=$e,In.magFilter=$e,In.wrapS=Qn,In.wrapT=Qn,In.generateMipmaps=!1,In.needsUpdate=!0),In}class Ix{constructor(t={}){const{canvas:e=$f(),context:i=null,depth:s=!0,stencil:r=!1,alpha:a=!1,antialias:o=!1,premultipliedAlpha:l=!0,preserveDrawingBuffer:c=!1,powerPreference:h="default",failIfMajorPerformanceCaveat:d=!1,reversedDepthBuffer:u=!1,outputBufferType:f=ln}=t;this.isWebGLRenderer=!0;let g;if(i!==null){if(typeof WebGLRenderingContext<"u"&&i instanceof WebGLRenderingContext)throw new Error("THREE.WebGLRenderer: WebGL 1 is not supported since r163.");g=i.getContextAttributes().alpha}else g=a;const S=f,m=new Set([Vl,Gl,Hl]),p=new Set([ln,Hn,Xs,gs,zl,kl]),x=new Uint32Array(4),y=new Int32Array(4),v={textures:[],min:[],max:[],resolution:[]};let M=null,A=null;const _=[],E=[];let D=null;this.domElement=e,this.debug={checkShaderErrors:!0,diagnostics:{keywords:!1},onShaderError:null},this.autoClear=!0,this.autoClearColor=!0,this.autoClearDepth=!0,this.autoClearStencil=!0,this.sortObjects=!0,this.clippingPlanes=[],this.localClippingEnabled=!1,this.toneMapping=ti,this.toneMappingExposure=1,this.transmissionResolutionScale=1;const w=this;let P=!1,N=null,F=null,C=null,B=null;this._outputColorSpace=xn;let W=0,k=0,et=null,q=-1,j=null;const tt=new fe,St=new fe;let Dt=null;const Z=new Xt(0);let ht=0,vt=e.width,At=e.height,mt=1,Nt=null,he=null;const Ct=new fe(0,0,vt,At),Yt=new fe(0,0,vt,At);let ne=!1;const Gt=new $s,Oe=new $l;let ye=!1,nn=!1;const ce=new $t,Dn=new I,Ce=new fe,dn={background:null,fog:null,environment:null,overrideMaterial:null,isScene:!0};let fn=!1;function pn(){return et===null?mt:1}let z=i;function mn(R,O){return e.getContext(R,O)}let oe,le,pt,Ee,Pt,It,L,T,G,nt,Q,at,dt,Y,K,lt,U,J,$,ct,rt,ot,Tt;try{const R={alpha:!0,depth:s,stencil:r,antialias:o,premultipliedAlpha:l,preserveDrawingBuffer:c,powerPreference:h,failIfMajorPerformanceCaveat:d};if("setAttribute"in e&&e.setAttribute("data-engine",`three.js r${Ks}`),e.addEventListener("webglcontextlost",wt,!1),e.addEventListener("webglcontextrestored",Bt,!1),e.addEventListener("webglcontextcreationerror",_t,!1),z===null){const O="webgl2";if(z=mn(O,R),z===null)throw mn(O)?new Error("THREE.WebGLRenderer: Error creating WebGL context with your selected attributes."):new Error("THREE.WebGLRenderer: Error creating WebGL context.")}zt()}catch(R){throw e.removeEventListener("webglcontextlost",wt,!1),e.removeEventListener("webglcontextrestored",Bt,!1),e.removeEventListener("webglcontextcreationerror",_t,!1),Zt("WebGLRenderer: "+R.message),R}function zt(){oe=new Og(z),oe.init(),rt=new bx(z,oe),le=new wg(z,oe,t,rt),pt=new yx(z,oe),le.reversedDepthBuffer&&u&&pt.buffers.depth.setReversed(!0),F=z.createFramebuffer(),C=z.createFramebuffer(),B=z.createFramebuffer(),Ee=new kg(z),Pt=new lx,It=new Ex(z,oe,pt,Pt,le,rt,Ee),L=new Fg(w),T=new Gp(z),ot=new bg(z,T),G=new Bg(z,T,Ee,ot),nt=new Gg(z,G,T,ot,Ee),J=new Hg(z,le,It),K=new Ag(Pt),Q=new ox(w,L,oe,le,ot,K),at=new Px(w,Pt),dt=new ux,Y=new _x(oe),U=new Eg(w,L,pt,nt,g,l),lt=new Mx(w,nt,le),Tt=new Lx(z,Ee,le,pt),$=new Tg(z,oe,Ee),ct=new zg(z,oe,Ee),Ee.programs=Q.programs,w.capabilities=le,w.extensions=oe,w.properties=Pt,w.renderLists=dt,w.shadowMap=lt,w.state=pt,w.info=Ee}S!==ln&&(D=new Wg(S,e.width,e.height,o,s,r));const it=new Rx(w,z);this.xr=it,this.getContext=function(){return z},this.getContextAttributes=function(){return z.getContextAttributes()},this.forceContextLoss=function(){const R=oe.get("WEBGL_lose_context");R&&R.loseContext()},this.forceContextRestore=function(){const R=oe.get("WEBGL_lose_context");R&&R.restoreContext()},this.getPixelRatio=function(){return mt},this.setPixelRatio=function(R){R!==void 0&&(mt=R,this.setSize(vt,At,!1))},this.getSize=function(R){return R.set(vt,At)},this.setSize=function(R,O,X=!0){if(it.isPresenting){Lt("WebGLRenderer: Can't change size while VR device is presenting.");return}vt=R,At=O,e.width=Math.floor(R*mt),e.height=Math.floor(O*mt),X===!0&&(e.style.width=R+"px",e.style.height=O+"px"),D!==null&&D.setSize(e.width,e.height),this.setViewport(0,0,R,O)},this.getDrawingBufferSize=function(R){return R.set(vt*mt,At*mt).floor()},this.setDrawingBufferSize=function(R,O,X){vt=R,At=O,mt=X,e.width=Math.floor(R*X),e.height=Math.floor(O*X),this.setViewport(0,0,R,O)},this.setEffects=function(R){if(S===ln){Zt("WebGLRenderer: setEffects() requires outputBufferType set to HalfFloatType or FloatType.");return}if(R){for(let O=0;O<R.length;O++)if(R[O].isOutputPass===!0){Lt("WebGLRenderer: OutputPass is not needed in setEffects(). Tone mapping and color space conversion are applied automatically.");break}}D.setEffects(R||[])},this.getCurrentViewport=function(R){return R.copy(tt)},this.getViewport=function(R){return R.copy(Ct)},this.setViewport=function(R,O,X,H){R.isVector4?Ct.set(R.x,R.y,R.z,R.w):Ct.set(R,O,X,H),pt.viewport(tt.copy(Ct).multiplyScalar(pn()).round())},this.getScissor=function(R){return R.copy(Yt)},this.setScissor=function(R,O,X,H){R.isVector4?Yt.set(R.x,R.y,R.z,R.w):Yt.set(R,O,X,H),pt.scissor(St.copy(Yt).multiplyScalar(pn()).round())},this.getScissorTest=function(){return ne},this.setScissorTest=function(R){pt.setScissorTest(ne=R)},this.setOpaqueSort=function(R){Nt=R},this.setTransparentSort=function(R){he=R},this.getClearColor=function(R){return R.copy(U.getClearColor())},this.setClearColor=function(){U.setClearColor(...arguments)},this.getClearAlpha=function(){return U.getClearAlpha()},this.setClearAlpha=function(){U.setClearAlpha(...arguments)},this.clear=function(R=!0,O=!0,X=!0){let H=0;if(R){let V=!1;if(et!==null){const ft=et.texture.format;V=m.has(ft)}if(V){const ft=et.texture.type,Mt=p.has(ft),ut=U.getClearColor(),xt=U.getClearAlpha(),bt=ut.r,Ut=ut.g,Vt=ut.b;Mt?(x[0]=bt,x[1]=Ut,x[2]=Vt,x[3]=xt,z.clearBufferuiv(z.COLOR,0,x)):(y[0]=bt,y[1]=Ut,y[2]=Vt,y[3]=xt,z.clearBufferiv(z.COLOR,0,y))}else H|=z.COLOR_BUFFER_BIT}O&&(H|=z.DEPTH_BUFFER_BIT,this.state.buffers.depth.setMask(!0)),X&&(H|=z.STENCIL_BUFFER_BIT,this.state.buffers.stencil.setMask(4294967295)),H!==0&&z.clear(H)},this.clearColor=function(){this.clear(!0,!1,!1)},this.clearDepth=function(){this.clear(!1,!0,!1)},this.clearStencil=function(){this.clear(!1,!1,!0)},this.setNodesHandler=function(R){R.setRenderer(this),N=R},this.dispose=function(){e.removeEventListener("webglcontextlost",wt,!1),e.removeEventListener("webglcontextrestored",Bt,!1),e.removeEventListener("webglcontextcreationerror",_t,!1),U.dispose(),dt.dispose(),Y.dispose(),It.dispose(),Pt.dispose(),L.dispose(),nt.dispose(),G.dispose(),ot.dispose(),Tt.dispose(),Q.dispose(),it.dispose(),it.removeEventListener("sessionstart",rc),it.removeEventListener("sessionend",ac),bi.stop()};function wt(R){R.preventDefault(),ga("WebGLRenderer: Context Lost."),P=!0}function Bt(){ga("WebGLRenderer: Context Restored."),P=!1;const R=Ee.autoReset,O=lt.enabled,X=lt.autoUpdate,H=lt.needsUpdate,V=lt.type;zt(),Ee.autoReset=R,lt.enabled=O,lt.autoUpdate=X,lt.needsUpdate=H,lt.type=V}function _t(R){Zt("WebGLRenderer: A WebGL context could not be created. Reason: ",R.statusMessage)}function jt(R){const O=R.target;O.removeEventListener("dispose",jt),Pe(O)}function Pe(R){ri(R),Pt.remove(R)}function ri(R){const O=Pt.get(R).programs;O!==void 0&&(O.forEach(function(X){Q.releaseProgram(X)}),R.isShaderMaterial&&Q.releaseShaderCache(R))}this.renderBufferDirect=function(R,O,X,H,V,ft){O===null&&(O=dn);const Mt=V.isMesh&&V.matrixWorld.determinantAffine()<0,ut=Pd(R,O,X,H,V);pt.setMaterial(H,Mt);let xt=X.index,bt=1;if(H.wireframe===!0){if(xt=G.getWireframeAttribute(X),xt===void 0)return;bt=2}const Ut=X.drawRange,Vt=X.attributes.position;let yt=Ut.start*bt,Wt=(Ut.start+Ut.count)*bt;ft!==null&&(yt=Math.max(yt,ft.start*bt),Wt=Math.min(Wt,(ft.start+ft.count)*bt)),xt!==null?(yt=Math.max(yt,0),Wt=Math.min(Wt,xt.count)):Vt!=null&&(yt=Math.max(yt,0),Wt=Math.min(Wt,Vt.count));const _e=Wt-yt;if(_e<0||_e===1/0)return;ot.setup(V,H,ut,X,xt);let ae,ie=$;if(xt!==null&&(ae=T.get(xt),ie=ct,ie.setIndex(ae)),V.isMesh)H.wireframe===!0?(pt.setLineWidth(H.wireframeLinewidth*pn()),ie.setMode(z.LINES)):ie.setMode(z.TRIANGLES);else if(V.isLine){let Ge=H.linewidth;Ge===void 0&&(Ge=1),pt.setLineWidth(Ge*pn()),V.isLineSegments?ie.setMode(z.LINES):V.isLineLoop?ie.setMode(z.LINE_LOOP):ie.setMode(z.LINE_STRIP)}else V.isPoints?ie.setMode(z.POINTS):V.isSprite&&ie.setMode(z.TRIANGLES);if(V.isBatchedMesh)if(oe.get("WEBGL_multi_draw"))ie.renderMultiDraw(V._multiDrawStarts,V._multiDrawCounts,V._multiDrawCount);else{const Ge=V._multiDrawStarts,Et=V._multiDrawCounts,Ke=V._multiDrawCount,Jt=xt?T.get(xt).bytesPerElement:1,Ti=Pt.get(H).currentProgram.getUniforms();for(let Ve=0;Ve<Ke;Ve++)Ti.setValue(z,"_gl_DrawID",Ve),ie.render(Ge[Ve]/Jt,Et[Ve])}else if(V.isInstancedMesh)ie.renderInstances(yt,_e,V.count);else if(X.isInstancedBufferGeometry){const Ge=X._maxInstanceCount!==void 0?X._maxInstanceCount:1/0,Et=Math.min(X.instanceCount,Ge);ie.renderInstances(yt,_e,Et)}else ie.render(yt,_e)};function sc(R,O,X,H){N!==null&&R.isNodeMaterial&&N.setObject(H,R),ye===!0&&K.setState(R,X,!1),R.transparent===!0&&R.side===rn&&R.forceSinglePass===!1?(R.side=Qe,R.needsUpdate=!0,ys(R,O,H),R.side=ni,R.needsUpdate=!0,ys(R,O,H),R.side=rn):ys(R,O,H)}this.compile=function(R,O,X=null){X===null&&(X=R),N!==null&&N.renderStart(R,O,X),A=Y.get(X),A.init(O),E.push(A),X.traverseVisible(function(V){V.isLight&&V.layers.test(O.layers)&&(A.pushLight(V),V.castShadow&&A.pushShadow(V))}),R!==X&&R.traverseVisible(function(V){V.isLight&&V.layers.test(O.layers)&&(A.pushLight(V),V.castShadow&&A.pushShadow(V))}),A.setupLights(),N!==null&&N.updateLights(A.state.lightsArray),nn=this.localClippingEnabled,ye=K.init(this.clippingPlanes,nn),ye===!0&&K.setGlobalState(this.clippingPlanes,O),N!==null&&lt.render(A.state.shadowsArray,X,O);const H=new Set;return R.traverse(function(V){if(!(V.isMesh||V.isPoints||V.isLine||V.isSprite))return;const ft=V.material;if(ft)if(Array.isArray(ft))for(let Mt=0;Mt<ft.length;Mt++){const ut=ft[Mt];sc(ut,X,O,V),H.add(ut)}else sc(ft,X,O,V),H.add(ft)}),A=E.pop(),N!==null&&N.renderEnd(),H},this.compileAsync=function(R,O,X=null){const H=this.compile(R,O,X);return new Promise(V=>{function ft(){if(H.forEach(function(Mt){const xt=Pt.get(Mt).currentProgram;(xt===void 0||xt.isReady())&&H.delete(Mt)}),H.size===0){V(R);return}setTimeout(ft,10)}oe.get("KHR_parallel_shader_compile")!==null?ft():setTimeout(ft,10)})};let Pa=null;function Rd(R){Pa&&Pa(R)}function rc(){bi.stop()}function ac(){bi.start()}const bi=new fd;bi.setAnimationLoop(Rd),typeof self<"u"&&bi.setContext(self),this.setAnimationLoop=function(R){Pa=R,it.setAnimationLoop(R),R===null?bi.stop():bi.start()},it.addEventListener("sessionstart",rc),it.addEventListener("sessionend",ac),this.render=function(R,O){if(O!==void 0&&O.isCamera!==!0){Zt("WebGLRenderer.render: camera is not an instance of THREE.Camera.");return}if(P===!0)return;N!==null&&N.renderStart(R,O);const X=it.enabled===!0&&it.isPresenting===!0,H=D!==null&&(et===null||X)&&D.begin(w,et);if(R.matrixWorldAutoUpdate===!0&&R.updateMatrixWorld(),O.parent===null&&O.matrixWorldAutoUpdate===!0&&O.updateMatrixWorld(),it.enabled===!0&&it.isPresenting===!0&&(D===null||D.isCompositing()===!1)&&(it.cameraAutoUpdate===!0&&it.updateCamera(O),O=it.getCamera()),R.isScene===!0&&R.onBeforeRender(w,R,O,et),A=Y.get(R,E.length),A.init(O),A.state.textureUnits=It.getTextureUnits(),E.push(A),ce.multiplyMatrices(O.projectionMatrix,O.matrixWorldInverse),O.isArrayCamera?Oe.setFromArrayCamera(O):Gt.setFromProjectionMatrix(ce,Pn,O.reversedDepth),nn=this.localClippingEnabled,ye=K.init(this.clippingPlanes,nn),M=dt.get(R,_.length),M.init(),_.push(M),this.info.render.frame++,it.enabled===!0&&it.isPresenting===!0){const Mt=w.xr.getDepthSensingMesh();Mt!==null&&La(Mt,O,-1/0,w.sortObjects)}La(R,O,0,w.sortObjects),M.finish(),N!==null&&N.updateLights(A.state.lightsArray),w.sortObjects===!0&&M.sort(Nt,he),fn=it.enabled===!1||it.isPresenting===!1||it.hasDepthSensing()===!1,fn&&U.addToRenderList(M,R),this.info.autoReset===!0&&this.info.reset(),ye===!0&&K.beginShadows();const V=A.state.shadowsArray;if(lt.render(V,R,O),ye===!0&&K.endShadows(),(H&&D.hasRenderPass())===!1){const Mt=M.opaque,ut=M.transmissive;if(A.setupLights(),O.isArrayCamera){const xt=O.cameras;if(ut.length>0)for(let bt=0,Ut=xt.length;bt<Ut;bt++){const Vt=xt[bt];lc(Mt,ut,R,Vt)}fn&&U.render(R);for(let bt=0,Ut=xt.length;bt<Ut;bt++){const Vt=xt[bt];oc(M,R,Vt,Vt.viewport)}}else ut.length>0&&lc(Mt,ut,R,O),fn&&U.render(R),oc(M,R,O)}et!==null&&k===0&&(It.updateMultisampleRenderTarget(et),It.updateRenderTargetMipmap(et)),H&&D.end(w),R.isScene===!0&&R.onAfterRender(w,R,O),ot.resetDefaultState(),q=-1,j=null,E.pop(),E.length>0?(A=E[E.length-1],It.setTextureUnits(A.state.textureUnits),ye===!0&&K.setGlobalState(w.clippingPlanes,A.state.camera)):A=null,_.pop(),_.length>0?M=_[_.length-1]:M=null,N!==null&&N.renderEnd()};function La(R,O,X,H){if(R.visible===!1)return;if(R.layers.test(O.layers)){if(R.isGroup)X=R.renderOrder;else if(R.isLOD)R.autoUpdate===!0&&R.update(O);else if(R.isLight)A.pushLight(R),R.castShadow&&A.pushShadow(R);else if(R.isSprite){const Mt=O.isArrayCamera?Oe:Gt;if(!R.frustumCulled||R.intersectsFrustum(Mt)){H&&Ce.setFromMatrixPosition(R.matrixWorld).applyMatrix4(ce);const ut=nt.update(R),xt=R.material;xt.visible&&M.push(R,ut,xt,X,Ce.z,null,O)}}else if(R.isMesh||R.isLine||R.isPoints){const Mt=O.isArrayCamera?Oe:Gt;if(!R.frustumCulled||R.intersectsFrustum(Mt)){const ut=nt.update(R),xt=R.material;if(H&&(R.boundingSphere!==void 0?(R.boundingSphere===null&&R.computeBoundingSphere(),Ce.copy(R.boundingSphere.center)):(ut.boundingSphere===null&&ut.computeBoundingSphere(),Ce.copy(ut.boundingSphere.center)),Ce.applyMatrix4(R.matrixWorld).applyMatrix4(ce)),Array.isArray(xt)){const bt=ut.groups;for(let Ut=0,Vt=bt.length;Ut<Vt;Ut++){const yt=bt[Ut],Wt=xt[yt.materialIndex];Wt&&Wt.visible&&M.push(R,ut,Wt,X,Ce.z,yt,O)}}else xt.visible&&M.push(R,ut,xt,X,Ce.z,null,O)}}}const ft=R.children;for(let Mt=0,ut=ft.length;Mt<ut;Mt++)La(ft[Mt],O,X,H)}function oc(R,O,X,H){const{opaque:V,transmissive:ft,transparent:Mt}=R;A.setupLightsView(X),ye===!0&&K.setGlobalState(w.clippingPlanes,X),H&&pt.viewport(tt.copy(H)),V.length>0&&tr(V,O,X),ft.length>0&&tr(ft,O,X),Mt.length>0&&tr(Mt,O,X),pt.buffers.depth.setTest(!0),pt.buffers.depth.setMask(!0),pt.buffers.color.setMask(!0),pt.setPolygonOffset(!1)}function lc(R,O,X,H){if((X.isScene===!0?X.overrideMaterial:null)!==null)return;if(A.state.transmissionRenderTarget[H.id]===void 0){const yt=oe.has("EXT_color_buffer_half_float")||oe.has("EXT_color_buffer_float");A.state.transmissionRenderTarget[H.id]=new kn(1,1,{generateMipmaps:!0,type:yt?Gn:ln,minFilter:gi,samples:Math.max(4,le.samples),stencilBuffer:r,resolveDepthBuffer:!1,resolveStencilBuffer:!1,storeMultisampledDepthBuffer:!1,storeMultisampledStencilBuffer:!1,colorSpace:qt.workingColorSpace})}const ft=A.state.transmissionRenderTarget[H.id],Mt=H.viewport||tt;ft.setSize(Mt.z*w.transmissionResolutionScale,Mt.w*w.transmissionResolutionScale);const ut=w.getRenderTarget(),xt=w.getActiveCubeFace(),bt=w.getActiveMipmapLevel();w.setRenderTarget(ft),w.getClearColor(Z),ht=w.getClearAlpha(),ht<1&&w.setClearColor(16777215,.5),w.clear(),fn&&U.render(X);const Ut=w.toneMapping;w.toneMapping=ti;const Vt=H.viewport;if(H.viewport!==void 0&&(H.viewport=void 0),A.setupLightsView(H),ye===!0&&K.setGlobalState(w.clippingPlanes,H),tr(R,X,H),It.updateMultisampleRenderTarget(ft),It.updateRenderTargetMipmap(ft),oe.has("WEBGL_multisampled_render_to_texture")===!1){let yt=!1;for(let Wt=0,_e=O.length;Wt<_e;Wt++){const ae=O[Wt],{object:ie,geometry:Ge,material:Et,group:Ke}=ae;if(Et.side===rn&&ie.layers.test(H.layers)){const Jt=Et.side;Et.side=Qe,Et.needsUpdate=!0,cc(ie,X,H,Ge,Et,Ke),Et.side=Jt,Et.needsUpdate=!0,yt=!0}}yt===!0&&(It.updateMultisampleRenderTarget(ft),It.updateRenderTargetMipmap(ft))}w.setRenderTarget(ut,xt,bt),w.setClearColor(Z,ht),Vt!==void 0&&(H.viewport=Vt),w.toneMapping=Ut}function tr(R,O,X){const H=O.isScene===!0?O.overrideMaterial:null;for(let V=0,ft=R.length;V<ft;V++){const Mt=R[V],{object:ut,geometry:xt,group:bt}=Mt;let Ut=Mt.material;Ut.allowOverride===!0&&H!==null&&(Ut=H),ut.layers.test(X.layers)&&cc(ut,O,X,xt,Ut,bt)}}function cc(R,O,X,H,V,ft){N!==null&&V.isNodeMaterial&&N.setObject(R,V),R.onBeforeRender(w,O,X,H,V,ft),R.modelViewMatrix.multiplyMatrices(X.matrixWorldInverse,R.matrixWorld),R.normalMatrix.getNormalMatrix(R.modelViewMatrix),V.onBeforeRender(w,O,X,H,R,ft),V.transparent===!0&&V.side===rn&&V.forceSinglePass===!1?(V.side=Qe,V.needsUpdate=!0,w.renderBufferDirect(X,O,H,V,R,ft),V.side=ni,V.needsUpdate=!0,w.renderBufferDirect(X,O,H,V,R,ft),V.side=rn):w.renderBufferDirect(X,O,H,V,R,ft),R.onAfterRender(w,O,X,H,V,ft)}function uc(R){let O=0;for(const X of R)X.texture!==null&&O++;return O}function ys(R,O,X){O.isScene!==!0&&(O=dn);const H=Pt.get(R),V=A.state.lights,ft=A.state.shadowsArray,Mt=V.state.version,ut=Q.getParameters(R,V.state,ft,O,X,A.state.lightProbeGridArray),xt=Q.getProgramCacheKey(ut);let bt=H.programs;H.environment=R.isMeshStandardMaterial||R.isMeshLambertMaterial||R.isMeshPhongMaterial?O.environment:null,H.fog=O.fog;const Ut=R.isMeshStandardMaterial||R.isMeshLambertMaterial&&!R.envMap||R.isMeshPhongMaterial&&!R.envMap;H.envMap=L.get(R.envMap||H.environment,Ut),H.envMapRotation=H.environment!==null&&R.envMap===null?O.environmentRotation:R.envMapRotation,bt===void 0&&(R.addEventListener("dispose",jt),bt=new Map,H.programs=bt,H.programVariants=new Map);let Vt=bt.get(xt);if(Vt!==void 0){if(H.currentProgram===Vt&&H.lightsStateVersion===Mt)return dc(R,ut),Vt}else ut.uniforms=Q.getUniforms(R),N!==null&&R.isNodeMaterial&&N.build(R,X,ut),R.onBeforeCompile(ut,w),Vt=Q.acquireProgram(ut,xt),bt.set(xt,Vt),H.uniforms=ut.uniforms;const yt=H.uniforms;return(!R.isShaderMaterial&&!R.isRawShaderMaterial||R.clipping===!0)&&(yt.clippingPlanes=K.uniform),dc(R,ut),H.needsLights=Dd(R),H.lightsStateVersion=Mt,H.needsLights&&(yt.ambientLightColor.value=V.state.ambient,yt.lightProbe.value=V.state.probe,yt.sunLights.value=V.state.sun,yt.sunLightShadows.value=V.state.sunShadow,yt.directionalLights.value=V.state.directional,yt.directionalLightShadows.value=V.state.directionalShadow,yt.spotLights.value=V.state.spot,yt.spotLightShadows.value=V.state.spotShadow,yt.rectAreaLights.value=V.state.rectArea,yt.ltc_1.value=V.state.rectAreaLTC1,yt.ltc_2.value=V.state.rectAreaLTC2,yt.pointLights.value=V.state.point,yt.pointLightShadows.value=V.state.pointShadow,yt.hemisphereLights.value=V.state.hemi,yt.sunShadowMatrix.value=V.state.sunShadowMatrix,yt.sunShadowCascade.value=V.state.sunShadowCascade,yt.directionalShadowMatrix.value=V.state.directionalShadowMatrix,yt.spotLightMatrix.value=V.state.spotLightMatrix,yt.spotLightMap.value=V.state.spotLightMap,yt.pointShadowMatrix.value=V.state.pointShadowMatrix),H.numLightProbeGrids=uc(A.state.lightProbeGridArray),H.currentProgram=Vt,H.uniformsList=null,Vt}function Cd(R,O,X,H,V){const ft=Pt.get(R),Mt=ft.currentProgram.id+","+H+","+V;let ut=ft.programVariants.get(Mt);return ut===void 0?(ut=ys(R,O,X),ft.programVariants.set(Mt,ut)):(ft.currentProgram=ut,ft.uniformsList=null,ft.outputColorSpace=H,ft.toneMapping=V),ut}function hc(R){if(R.uniformsList===null){const O=R.currentProgram.getUniforms();R.uniformsList=aa.seqWithValue(O.seq,R.uniforms)}return R.uniformsList}function dc(R,O){const X=Pt.get(R);X.outputColorSpace=O.outputColorSpace,X.batching=O.batching,X.batchingColor=O.batchingColor,X.instancing=O.instancing,X.instancingColor=O.instancingColor,X.instancingMorph=O.instancingMorph,X.skinning=O.skinning,X.morphTargets=O.morphTargets,X.morphNormals=O.morphNormals,X.morphColors=O.morphColors,X.morphTargetsCount=O.morphTargetsCount,X.numClippingPlanes=O.numClippingPlanes,X.numIntersection=O.numClipIntersection,X.vertexAlphas=O.vertexAlphas,X.vertexTangents=O.vertexTangents,X.toneMapping=O.toneMapping}function Pd(R,O,X,H,V){O.isScene!==!0&&(O=dn),It.resetTextureUnits();const ft=O.fog,Mt=H.isMeshStandardMaterial||H.isMeshLambertMaterial||H.isMeshPhongMaterial?O.environment:null,ut=et===null?w.outputColorSpace:et.isXRRenderTarget===!0?et.texture.colorSpace:qt.workingColorSpace,xt=H.isMeshStandardMaterial||H.isMeshLambertMaterial&&!H.envMap||H.isMeshPhongMaterial&&!H.envMap,bt=L.get(H.envMap||Mt,xt),Ut=H.vertexColors===!0&&!!X.attributes.color&&X.attributes.color.itemSize===4,Vt=!!X.attributes.tangent&&(!!H.normalMap||H.anisotropy>0),yt=!!X.morphAttributes.position,Wt=!!X.morphAttributes.normal,_e=!!X.morphAttributes.color;let ae=ti;H.toneMapped&&(et===null||et.isXRRenderTarget===!0)&&(ae=w.toneMapping);const ie=X.morphAttributes.position||X.morphAttributes.normal||X.morphAttributes.color,Ge=ie!==void 0?ie.length:0,Et=Pt.get(H),Ke=A.state.lights;if(ye===!0&&(nn===!0||R!==j)){const ue=R===j&&H.id===q;K.setState(H,R,ue)}let Jt=!1,Ti=!1;H.version===Et.__version?Et.needsLights&&Et.lightsStateVersion!==Ke.state.version||V.isBatchedMesh&&Et.batching===!1||!V.isBatchedMesh&&Et.batching===!0||V.isBatchedMesh&&Et.batchingColor===!0&&V._colorsTexture===null||V.isBatchedMesh&&Et.batchingColor===!1&&V._colorsTexture!==null||V.isInstancedMesh&&Et.instancing===!1||!V.isInstancedMesh&&Et.instancing===!0||V.isSkinnedMesh&&Et.skinning===!1||!V.isSkinnedMesh&&Et.skinning===!0||V.isInstancedMesh&&Et.instancingColor===!0&&V.instanceColor===null||V.isInstancedMesh&&Et.instancingColor===!1&&V.instanceColor!==null||V.isInstancedMesh&&Et.instancingMorph===!0&&V.morphTexture===null||V.isInstancedMesh&&Et.instancingMorph===!1&&V.morphTexture!==null||Et.envMap!==bt||H.fog===!0&&Et.fog!==ft||Et.numClippingPlanes!==void 0&&(Et.numClippingPlanes!==K.numPlanes||Et.numIntersection!==K.numIntersection)||Et.vertexAlphas!==Ut||Et.vertexTangents!==Vt||Et.morphTargets!==yt||Et.morphNormals!==Wt||Et.morphColors!==_e||Et.morphTargetsCount!==Ge||Et.numLightProbeGrids!==uc(A.state.lightProbeGridArray)?Jt=!0:(Et.outputColorSpace!==ut||Et.toneMapping!==ae)&&(Ti=!0):(Jt=!0,Et.__version=H.version);let Ve=Et.currentProgram;(Jt===!0||Ti===!0)&&(Ve=Ti===!0?Cd(H,O,V,ut,ae):ys(H,O,V),N&&H.isNodeMaterial&&N.onUpdateProgram(H,Ve,Et));let er=!1,ai=!1,wi=!1;const Kt=Ve.getUniforms(),Be=Et.uniforms;if(pt.useProgram(Ve.program)&&(er=!0,ai=!0,wi=!0),H.id!==q&&(q=H.id,ai=!0),er||j!==R){pt.buffers.depth.getReversed()&&R.reversedDepth!==!0&&(R._reversedDepth=!0,R.updateProjectionMatrix()),Kt.setValue(z,"projectionMatrix",R.projectionMatrix),Kt.setValue(z,"viewMatrix",R.matrixWorldInverse);const Le=Kt.map.cameraPosition;Le!==void 0&&Le.setValue(z,Dn.setFromMatrixPosition(R.matrixWorld)),le.logarithmicDepthBuffer&&Kt.setValue(z,"logDepthBufFC",2/(Math.log(R.far+1)/Math.LN2)),(H.isMeshPhongMaterial||H.isMeshToonMaterial||H.isMeshLambertMaterial||H.isMeshBasicMaterial||H.isMeshStandardMaterial||H.isShaderMaterial)&&Kt.setValue(z,"isOrthographic",R.isOrthographicCamera===!0),j!==R&&(j=R,ai=!0,wi=!0)}if(Et.needsLights&&(Ke.state.sunShadowMap.length>0&&Kt.setValue(z,"sunShadowMap",Ke.state.sunShadowMap,It),Ke.state.directionalShadowMap.length>0&&Kt.setValue(z,"directionalShadowMap",Ke.state.directionalShadowMap,It),Ke.state.spotShadowMap.length>0&&Kt.setValue(z,"spotShadowMap",Ke.state.spotShadowMap,It),Ke.state.pointShadowMap.length>0&&Kt.setValue(z,"pointShadowMap",Ke.state.pointShadowMap,It)),V.isSkinnedMesh){Kt.setOptional(z,V,"bindMatrix"),Kt.setOptional(z,V,"bindMatrixInverse");const ue=V.skeleton;ue&&(ue.boneTexture===null&&ue.computeBoneTexture(),Kt.setValue(z,"boneTexture",ue.boneTexture,It))}V.isBatchedMesh&&(Kt.setOptional(z,V,"batchingTexture"),Kt.setValue(z,"batchingTexture",V._matricesTexture,It),Kt.setOptional(z,V,"batchingIdTexture"),Kt.setValue(z,"batchingIdTexture",V._indirectTexture,It),Kt.setOptional(z,V,"batchingColorTexture"),V._colorsTexture!==null&&Kt.setValue(z,"batchingColorTexture",V._colorsTexture,It));const En=X.morphAttributes;if((En.position!==void 0||En.normal!==void 0||En.color!==void 0)&&J.update(V,X,Ve),(ai||Et.receiveShadow!==V.receiveShadow)&&(Et.receiveShadow=V.receiveShadow,Kt.setValue(z,"receiveShadow",V.receiveShadow)),(H.isMeshStandardMaterial||H.isMeshLambertMaterial||H.isMeshPhongMaterial)&&H.envMap===null&&O.environment!==null&&(Be.envMapIntensity.value=O.environmentIntensity),Be.dfgLUT!==void 0&&(Be.dfgLUT.value=Nx()),ai){if(Kt.setValue(z,"toneMappingExposure",w.toneMappingExposure),Et.needsLights&&Ld(Be,wi),ft&&H.fog===!0&&at.refreshFogUniforms(Be,ft),at.refreshMaterialUniforms(Be,H,mt,At,A.state.transmissionRenderTarget[R.id]),Et.needsLights&&Et.numLightProbeGrids>0){const ue=v;let Le=0;for(const Wn of A.state.lightProbeGridArray)Wn.texture!==null&&(ue.textures[Le]=Wn.texture,ue.min[Le]=Wn.boundingBox.min,ue.max[Le]=Wn.boundingBox.max,ue.resolution[Le]=Wn.resolution,Le++);for(const Wn in ue)ue[Wn].length=Le;Be.probesSH.value=ue.textures,Be.probesMin.value=ue.min,Be.probesMax.value=ue.max,Be.probesResolution.value=ue.resolution}aa.upload(z,hc(Et),Be,It)}if(H.isShaderMaterial&&H.uniformsNeedUpdate===!0&&(aa.upload(z,hc(Et),Be,It),H.uniformsNeedUpdate=!1),H.isSpriteMaterial&&Kt.setValue(z,"center",V.center),Kt.setValue(z,"modelViewMatrix",V.modelViewMatrix),Kt.setValue(z,"normalMatrix",V.normalMatrix),Kt.setValue(z,"modelMatrix",V.matrixWorld),H.uniformsGroups!==void 0){const ue=H.uniformsGroups;for(let Le=0,Wn=ue.length;Le<Wn;Le++){const pc=ue[Le];Tt.update(pc,Ve),Tt.bind(pc,Ve)}}return Ve}function Ld(R,O){R.ambientLightColor.needsUpdate=O,R.lightProbe.needsUpdate=O,R.sunLights.needsUpdate=O,R.sunLightShadows.needsUpdate=O,R.directionalLights.needsUpdate=O,R.directionalLightShadows.needsUpdate=O,R.pointLights.needsUpdate=O,R.pointLightShadows.needsUpdate=O,R.spotLights.needsUpdate=O,R.spotLightShadows.needsUpdate=O,R.rectAreaLights.needsUpdate=O,R.hemisphereLights.needsUpdate=O}function Dd(R){return R.isMeshLambertMaterial||R.isMeshToonMaterial||R.isMeshPhongMaterial||R.isMeshStandardMaterial||R.isShadowMaterial||R.isShaderMaterial&&R.lights===!0}this.getActiveCubeFace=function(){return W},this.getActiveMipmapLevel=function(){return k},this.getRenderTarget=function(){return et},this.setRenderTargetTextures=function(R,O,X){const H=Pt.get(R);H.__autoAllocateDepthBuffer=R.resolveDepthBuffer===!1,H.__autoAllocateDepthBuffer===!1&&(H.__useRenderToTexture=!1),Pt.get(R.texture).__webglTexture=O,Pt.get(R.depthTexture).__webglTexture=H.__autoAllocateDepthBuffer?void 0:X,H.__hasExternalTextures=!0},this.setRenderTargetFramebuffer=function(R,O){const X=Pt.get(R);X.__webglFramebuffer=O,X.__useDefaultFramebuffer=O===void 0},this.setRenderTarget=function(R,O=0,X=0){et=R,W=O,k=X;let H=null,V=!1,ft=!1;if(R){const ut=Pt.get(R);if(ut.__useDefaultFramebuffer!==void 0){pt.bindFramebuffer(z.FRAMEBUFFER,ut.__webglFramebuffer),tt.copy(R.viewport),St.copy(R.scissor),Dt=R.scissorTest,pt.viewport(tt),pt.scissor(St),pt.setScissorTest(Dt),q=-1;return}else if(ut.__webglFramebuffer===void 0)It.setupRenderTarget(R);else if(ut.__hasExternalTextures)It.rebindTextures(R,Pt.get(R.texture).__webglTexture,Pt.get(R.depthTexture).__webglTexture);else if(R.depthBuffer){const Ut=R.depthTexture;if(ut.__boundDepthTexture!==Ut){if(Ut!==null&&Pt.has(Ut)&&(R.width!==Ut.image.width||R.height!==Ut.image.height))throw new Error("THREE.WebGLRenderer: Attached DepthTexture is initialized to the incorrect size.");It.setupDepthRenderbuffer(R)}}const xt=R.texture;(xt.isData3DTexture||xt.isDataArrayTexture||xt.isCompressedArrayTexture)&&(ft=!0);const bt=Pt.get(R).__webglFramebuffer;R.isWebGLCubeRenderTarget?(Array.isArray(bt[O])?H=bt[O][X]:H=bt[O],V=!0):R.samples>0&&It.useMultisampledRTT(R)===!1?H=Pt.get(R).__webglMultisampledFramebuffer:Array.isArray(bt)?H=bt[X]:H=bt,tt.copy(R.viewport),St.copy(R.scissor),Dt=R.scissorTest}else tt.copy(Ct).multiplyScalar(mt).floor(),St.copy(Yt).multiplyScalar(mt).floor(),Dt=ne;if(X!==0&&(H=F),pt.bindFramebuffer(z.FRAMEBUFFER,H)&&pt.drawBuffers(R,H),pt.viewport(tt),pt.scissor(St),pt.setScissorTest(Dt),V){const ut=Pt.get(R.texture);z.framebufferTexture2D(z.FRAMEBUFFER,z.COLOR_ATTACHMENT0,z.TEXTURE_CUBE_MAP_POSITIVE_X+O,ut.__webglTexture,X)}else if(ft){const ut=O;for(let xt=0;xt<R.textures.length;xt++){const bt=Pt.get(R.textures[xt]);z.framebufferTextureLayer(z.FRAMEBUFFER,z.COLOR_ATTACHMENT0+xt,bt.__webglTexture,X,ut)}}else if(R!==null&&X!==0){const ut=Pt.get(R.texture);z.framebufferTexture2D(z.FRAMEBUFFER,z.COLOR_ATTACHMENT0,z.TEXTURE_2D,ut.__webglTexture,X)}q=-1};function fc(R){const O=Pt.get(R);return(O.__readFormat!==R.format||O.__readType!==R.type)&&(O.__readFormat=R.format,O.__readType=R.type,O.__formatReadable=le.textureFormatReadable(R.format),O.__typeReadable=le.textureTypeReadable(R.type)),O}this.readRenderTargetPixels=function(R,O,X,H,V,ft,Mt,ut=0){if(!(R&&R.isWebGLRenderTarget)){Zt("WebGLRenderer.readRenderTargetPixels: renderTarget is not THREE.WebGLRenderTarget.");return}let xt=Pt.get(R).__webglFramebuffer;if(R.isWebGLCubeRenderTarget&&Mt!==void 0&&(xt=xt[Mt],Array.isArray(xt)&&(xt=xt[0])),xt){pt.bindFramebuffer(z.FRAMEBUFFER,xt);try{const bt=R.textures[ut],Ut=bt.format,Vt=bt.type;R.textures.length>1&&z.readBuffer(z.COLOR_ATTACHMENT0+ut);const yt=fc(bt);if(yt.__formatReadable===!1){Zt("WebGLRenderer.readRenderTargetPixels: renderTarget is not in RGBA or implementation defined format.");return}if(yt.__typeReadable===!1){Zt("WebGLRenderer.readRenderTargetPixels: renderTarget is not in UnsignedByteType or implementation defined type.");return}O>=0&&O<=R.width-H&&X>=0&&X<=R.height-V&&z.readPixels(O,X,H,V,rt.convert(Ut),rt.convert(Vt),ft)}finally{const bt=et!==null?Pt.get(et).__webglFramebuffer:null;pt.bindFramebuffer(z.FRAMEBUFFER,bt)}}},this.readRenderTargetPixelsAsync=async function(R,O,X,H,V,ft,Mt,ut=0){if(!(R&&R.isWebGLRenderTarget))throw new Error("THREE.WebGLRenderer.readRenderTargetPixels: renderTarget is not THREE.WebGLRenderTarget.");let xt=Pt.get(R).__webglFramebuffer;if(R.isWebGLCubeRenderTarget&&Mt!==void 0&&(xt=xt[Mt],Array.isArray(xt)&&(xt=xt[0])),xt)if(O>=0&&O<=R.width-H&&X>=0&&X<=R.height-V){pt.bindFramebuffer(z.FRAMEBUFFER,xt);const bt=R.textures[ut],Ut=bt.format,Vt=bt.type;R.textures.length>1&&z.readBuffer(z.COLOR_ATTACHMENT0+ut);const yt=fc(bt);if(yt.__formatReadable===!1)throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: renderTarget is not in RGBA or implementation defined format.");if(yt.__typeReadable===!1)throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: renderTarget is not in UnsignedByteType or implementation defined type.");const Wt=z.createBuffer();z.bindBuffer(z.PIXEL_PACK_BUFFER,Wt),z.bufferData(z.PIXEL_PACK_BUFFER,ft.byteLength,z.STREAM_READ),z.readPixels(O,X,H,V,rt.convert(Ut),rt.convert(Vt),0),z.bindBuffer(z.PIXEL_PACK_BUFFER,null);const _e=et!==null?Pt.get(et).__webglFramebuffer:null;pt.bindFramebuffer(z.FRAMEBUFFER,_e);const ae=z.fenceSync(z.SYNC_GPU_COMMANDS_COMPLETE,0);return z.flush(),await Yf(z,ae,4),z.bindBuffer(z.PIXEL_PACK_BUFFER,Wt),z.getBufferSubData(z.PIXEL_PACK_BUFFER,0,ft),z.bindBuffer(z.PIXEL_PACK_BUFFER,null),z.deleteBuffer(Wt),z.deleteSync(ae),ft}else throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: requested read bounds are out of range.")},this.copyFramebufferToTexture=function(R,O=null,X=0){const H=Math.pow(2,-X),V=Math.floor(R.image.width*H),ft=Math.floor(R.image.height*H),Mt=O!==null?O.x:0,ut=O!==null?O.y:0;It.setTexture2D(R,0),z.copyTexSubImage2D(z.TEXTURE_2D,X,0,0,Mt,ut,V,ft),pt.unbindTexture()},this.copyTextureToTexture=function(R,O,X=null,H=null,V=0,ft=0){let Mt,ut,xt,bt,Ut,Vt,yt,Wt,_e;const ae=R.isCompressedTexture?R.mipmaps[ft]:R.image;if(X!==null)Mt=X.max.x-X.min.x,ut=X.max.y-X.min.y,xt=X.isBox3?X.max.z-X.min.z:1,bt=X.min.x,Ut=X.min.y,Vt=X.isBox3?X.min.z:0;else{const Kt=Math.pow(2,-V);Mt=Math.floor(ae.width*Kt),ut=Math.floor(ae.height*Kt),R.isDataArrayTexture?xt=ae.depth:R.isData3DTexture?xt=Math.floor(ae.depth*Kt):xt=1,bt=0,Ut=0,Vt=0}H!==null?(yt=H.x,Wt=H.y,_e=H.z):(yt=0,Wt=0,_e=0);const ie=rt.convert(O.format),Ge=rt.convert(O.type);let Et;O.isData3DTexture?(It.setTexture3D(O,0),Et=z.TEXTURE_3D):O.isDataArrayTexture||O.isCompressedArrayTexture?(It.setTexture2DArray(O,0),Et=z.TEXTURE_2D_ARRAY):(It.setTexture2D(O,0),Et=z.TEXTURE_2D),pt.activeTexture(z.TEXTURE0),pt.pixelStorei(z.UNPACK_FLIP_Y_WEBGL,O.flipY),pt.pixelStorei(z.UNPACK_PREMULTIPLY_ALPHA_WEBGL,O.premultiplyAlpha),pt.pixelStorei(z.UNPACK_ALIGNMENT,O.unpackAlignment);const Ke=pt.getParameter(z.UNPACK_ROW_LENGTH),Jt=pt.getParameter(z.UNPACK_IMAGE_HEIGHT),Ti=pt.getParameter(z.UNPACK_SKIP_PIXELS),Ve=pt.getParameter(z.UNPACK_SKIP_ROWS),er=pt.getParameter(z.UNPACK_SKIP_IMAGES);pt.pixelStorei(z.UNPACK_ROW_LENGTH,ae.width),pt.pixelStorei(z.UNPACK_IMAGE_HEIGHT,ae.height),pt.pixelStorei(z.UNPACK_SKIP_PIXELS,bt),pt.pixelStorei(z.UNPACK_SKIP_ROWS,Ut),pt.pixelStorei(z.UNPACK_SKIP_IMAGES,Vt);const ai=R.isDataArrayTexture||R.isData3DTexture,wi=O.isDataArrayTexture||O.isData3DTexture;if(R.isDepthTexture){const Kt=Pt.get(R),Be=Pt.get(O),En=Pt.get(Kt.__renderTarget),ue=Pt.get(Be.__renderTarget);pt.bindFramebuffer(z.READ_FRAMEBUFFER,En.__webglFramebuffer),pt.bindFramebuffer(z.DRAW_FRAMEBUFFER,ue.__webglFramebuffer);for(let Le=0;Le<xt;Le++)ai&&(z.framebufferTextureLayer(z.READ_FRAMEBUFFER,z.COLOR_ATTACHMENT0,Pt.get(R).__webglTexture,V,Vt+Le),z.framebufferTextureLayer(z.DRAW_FRAMEBUFFER,z.COLOR_ATTACHMENT0,Pt.get(O).__webglTexture,ft,_e+Le)),z.blitFramebuffer(bt,Ut,bt+Mt,Ut+ut,yt,Wt,yt+Mt,Wt+ut,z.DEPTH_BUFFER_BIT,z.NEAREST);pt.bindFramebuffer(z.READ_FRAMEBUFFER,null),pt.bindFramebuffer(z.DRAW_FRAMEBUFFER,null)}else if(V!==0||R.isRenderTargetTexture||Pt.has(R)){const Kt=Pt.get(R),Be=Pt.get(O);pt.bindFramebuffer(z.READ_FRAMEBUFFER,C),pt.bindFramebuffer(z.DRAW_FRAMEBUFFER,B);for(let En=0;En<xt;En++)ai?z.framebufferTextureLayer(z.READ_FRAMEBUFFER,z.COLOR_ATTACHMENT0,Kt.__webglTexture,V,Vt+En):z.framebufferTexture2D(z.READ_FRAMEBUFFER,z.COLOR_ATTACHMENT0,z.TEXTURE_2D,Kt.__webglTexture,V),wi?z.framebufferTextureLayer(z.DRAW_FRAMEBUFFER,z.COLOR_ATTACHMENT0,Be.__webglTexture,ft,_e+En):z.framebufferTexture2D(z.DRAW_FRAMEBUFFER,z.COLOR_ATTACHMENT0,z.TEXTURE_2D,Be.__webglTexture,ft),V!==0?z.blitFramebuffer(bt,Ut,bt+Mt,Ut+ut,yt,Wt,yt+Mt,Wt+ut,z.COLOR_BUFFER_BIT,z.NEAREST):wi?z.copyTexSubImage3D(Et,ft,yt,Wt,_e+En,bt,Ut,Mt,ut):z.copyTexSubImage2D(Et,ft,yt,Wt,bt,Ut,Mt,ut);pt.bindFramebuffer(z.READ_FRAMEBUFFER,null),pt.bindFramebuffer(z.DRAW_FRAMEBUFFER,null)}else wi?R.isDataTexture||R.isData3DTexture?z.texSubImage3D(Et,ft,yt,Wt,_e,Mt,ut,xt,ie,Ge,ae.data):O.isCompressedArrayTexture?z.compressedTexSubImage3D(Et,ft,yt,Wt,_e,Mt,ut,xt,ie,ae.data):z.texSubImage3D(Et,ft,yt,Wt,_e,Mt,ut,xt,ie,Ge,ae):R.isDataTexture?z.texSubImage2D(z.TEXTURE_2D,ft,yt,Wt,Mt,ut,ie,Ge,ae.data):R.isCompressedTexture?z.compressedTexSubImage2D(z.TEXTURE_2D,ft,yt,Wt,ae.width,ae.height,ie,ae.data):z.texSubImage2D(z.TEXTURE_2D,ft,yt,Wt,Mt,ut,ie,Ge,ae);pt.pixelStorei(z.UNPACK_ROW_LENGTH,Ke),pt.pixelStorei(z.UNPACK_IMAGE_HEIGHT,Jt),pt.pixelStorei(z.UNPACK_SKIP_PIXELS,Ti),pt.pixelStorei(z.UNPACK_SKIP_ROWS,Ve),pt.pixelStorei(z.UNPACK_SKIP_IMAGES,er),ft===0&&O.generateMipmaps===!0&&O.mipmapsAutoUpdate===!0&&z.generateMipmap(Et),pt.unbindTexture()},this.initRenderTarget=function(R){Pt.get(R).__webglFramebuffer===void 0&&It.setupRenderTarget(R)},this.initTexture=function(R){R.isCubeTexture?It.setTextureCube(R,0):R.isData3DTexture?It.setTexture3D(R,0):R.isDataArrayTexture||R.isCompressedArrayTexture?It.setTexture2DArray(R,0):It.setTexture2D(R,0),pt.unbindTexture()},this.resetState=function(){W=0,k=0,et=null,pt.reset(),ot.reset()},typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}get coordinateSystem(){return Pn}get outputColorSpace(){return this._outputColorSpace}set outputColorSpace(t){this._outputColorSpace=t;const e=this.getContext();e.drawingBufferColorSpace=qt._getDrawingBufferColorSpace(t),e.unpackColorSpace=qt._getUnpackColorSpace()}}const Fu={type:"change"},Jl={type:"start"},bd={type:"end"},Cr=new Js,Ou=new vn,Ux=Math.cos(70*Qf.DEG2RAD),be=new I,sn=2*Math.PI,Qt={NONE:-1,ROTATE:0,DOLLY:1,PAN:2,TOUCH_ROTATE:3,TOUCH_PAN:4,TOUCH_DOLLY_PAN:5,TOUCH_DOLLY_ROTATE:6},uo=1e-6;class Fx extends kp{constructor(t,e=null){super(t,e),this.state=Qt.NONE,this.target=new I,this.cursor=new I,this.minDistance=0,this.maxDistance=1/0,this.minZoom=0,this.maxZoom=1/0,this.minTargetRadius=0,this.maxTargetRadius=1/0,this.minPolarAngle=0,this.maxPolarAngle=Math.PI,this.minAzimuthAngle=-1/0,this.maxAzimuthAngle=1/0,this.enableDamping=!1,this.dampingFactor=.05,this.enableZoom=!0,this.zoomSpeed=1,this.enableRotate=!0,this.rotateSpeed=1,this.keyRotateSpeed=1,this.enablePan=!0,this.panSpeed=1,this.screenSpacePanning=!0,this.keyPanSpeed=7,this.zoomToCursor=!1,this.autoRotate=!1,this.autoRotateSpeed=2,this.keys={LEFT:"ArrowLeft",UP:"ArrowUp",RIGHT:"ArrowRight",BOTTOM:"ArrowDown"},this.mouseButtons={LEFT:fs.ROTATE,MIDDLE:fs.DOLLY,RIGHT:fs.PAN},this.touches={ONE:hs.ROTATE,TWO:hs.DOLLY_PAN},this.target0=this.target.clone(),this.position0=this.object.position.clone(),this.zoom0=this.object.zoom,this._cursorStyle="auto",this._domElementKeyEvents=null,this._lastPosition=new I,this._lastQuaternion=new Mi,this._lastTargetPosition=new I,this._quat=new Mi().setFromUnitVectors(t.up,new I(0,1,0)),this._quatInverse=this._quat.clone().invert(),this._spherical=new du,this._sphericalDelta=new du,this._scale=1,this._panOffset=new I,this._rotateStart=new Rt,this._rotateEnd=new Rt,this._rotateDelta=new Rt,this._panStart=new Rt,this._panEnd=new Rt,this._panDelta=new Rt,this._dollyStart=new Rt,this._dollyEnd=new Rt,this._dollyDelta=new Rt,this._dollyDirection=new I,this._mouse=new Rt,this._performCursorZoom=!1,this._pointers=[],this._pointerPositions={},this._controlActive=!1,this._onPointerMove=Bx.bind(this),this._onPointerDown=Ox.bind(this),this._onPointerUp=zx.bind(this),this._onContextMenu=qx.bind(this),this._onMouseWheel=Gx.bind(this),this._onKeyDown=Vx.bind(this),this._onTouchStart=Wx.bind(this),this._onTouchMove=Xx.bind(this),this._onMouseDown=kx.bind(this),this._onMouseMove=Hx.bind(this),this._interceptControlDown=$x.bind(this),this._interceptControlUp=Yx.bind(this),this.domElement!==null&&this.connect(this.domElement),this.update()}set cursorStyle(t){this._cursorStyle=t,t==="grab"?this.domElement.style.cursor="grab":this.domElement.style.cursor="auto"}get cursorStyle(){return this._cursorStyle}connect(t){super.connect(t),this.domElement.addEventListener("pointerdown",this._onPointerDown),this.domElement.addEventListener("pointercancel",this._onPointerUp),this.domElement.addEventListener("contextmenu",this._onContextMenu),this.domElement.addEventListener("wheel",this._onMouseWheel,{passive:!1}),this.domElement.ownerDocument.addEventListener("keydown",this._interceptControlDown,{passive:!0,capture:!0}),this.domElement.style.touchAction="none"}disconnect(){this.state=Qt.NONE,this.domElement.removeEventListener("pointerdown",this._onPointerDown),this.domElement.ownerDocument.removeEventListener("pointermove",this._onPointerMove),this.domElement.ownerDocument.removeEventListener("pointerup",this._onPointerUp),this.domElement.removeEventListener("pointercancel",this._onPointerUp),this.domElement.removeEventListener("wheel",this._onMouseWheel),this.domElement.removeEventListener("contextmenu",this._onContextMenu),this.stopListenToKeyEvents(),this.domElement.ownerDocument.removeEventListener("keydown",this._interceptControlDown,{capture:!0}),this.domElement.ownerDocument.removeEventListener("keyup",this._interceptControlUp,{capture:!0}),this._controlActive=!1,this._pointers.length=0,this._pointerPositions={},this.domElement.style.touchAction="",this.domElement.style.cursor="auto"}dispose(){this.disconnect()}getPolarAngle(){return this._spherical.phi}getAzimuthalAngle(){return this._spherical.theta}getDistance(){return this.object.position.distanceTo(this.target)}listenToKeyEvents(t){t.addEventListener("keydown",this._onKeyDown),this._domElementKeyEvents=t}stopListenToKeyEvents(){this._domElementKeyEvents!==null&&(this._domElementKeyEvents.removeEventListener("keydown",this._onKeyDown),this._domElementKeyEvents=null)}saveState(){this.target0.copy(this.target),this.position0.copy(this.object.position),this.zoom0=this.object.zoom}reset(){this.target.copy(this.target0),this.object.position.copy(this.position0),this.object.zoom=this.zoom0,this.object.updateProjectionMatrix(),this.dispatchEvent(Fu),this.update(),this.state=Qt.NONE}pan(t,e){this._pan(t,e),this.update()}dollyIn(t){this._dollyIn(t),this.update()}dollyOut(t){this._dollyOut(t),this.update()}rotateLeft(t){this._rotateLeft(t),this.update()}rotateUp(t){this._rotateUp(t),this.update()}update(t=null){const e=this.object.position;be.copy(e).sub(this.target),be.applyQuaternion(this._quat),this._spherical.setFromVector3(be),this.autoRotate&&this.state===Qt.NONE&&this._rotateLeft(this._getAutoRotationAngle(t)),this.enableDamping?(this._spherical.theta+=this._sphericalDelta.theta*this.dampingFactor,this._spherical.phi+=this._sphericalDelta.phi*this.dampingFactor):(this._spherical.theta+=this._sphericalDelta.theta,this._spherical.phi+=this._sphericalDelta.phi);let i=this.minAzimuthAngle,s=this.maxAzimuthAngle;isFinite(i)&&isFinite(s)&&(i<-Math.PI?i+=sn:i>Math.PI&&(i-=sn),s<-Math.PI?s+=sn:s>Math.PI&&(s-=sn),i<=s?this._spherical.theta=Math.max(i,Math.min(s,this._spherical.theta)):this._spherical.theta=this._spherical.theta>(i+s)/2?Math.max(i,this._spherical.theta):Math.min(s,this._spherical.theta)),this._spherical.phi=Math.max(this.minPolarAngle,Math.min(this.maxPolarAngle,this._spherical.phi)),this._spherical.makeSafe(),this.enableDamping===!0?this.target.addScaledVector(this._panOffset,this.dampingFactor):this.target.add(this._panOffset),this.target.sub(this.cursor),this.target.clampLength(this.minTargetRadius,this.maxTargetRadius),this.target.add(this.cursor);let r=!1;if(this.zoomToCursor&&this._performCursorZoom||this.object.isOrthographicCamera)this._spherical.radius=this._clampDistance(this._spherical.radius);else{const a=this._spherical.radius;this._spherical.radius=this._clampDistance(this._spherical.radius*this._scale),r=a!=this._spherical.radius}if(be.setFromSpherical(this._spherical),be.applyQuaternion(this._quatInverse),e.copy(this.target).add(be),this.object.lookAt(this.target),this.enableDamping===!0?(this._sphericalDelta.theta*=1-this.dampingFactor,this._sphericalDelta.phi*=1-this.dampingFactor,this._panOffset.multiplyScalar(1-this.dampingFactor)):(this._sphericalDelta.set(0,0,0),this._panOffset.set(0,0,0)),this.zoomToCursor&&this._performCursorZoom){let a=null;if(this.object.isPerspectiveCamera){const o=be.length();a=this._clampDistance(o*this._scale);const l=o-a;this.object.position.addScaledVector(this._dollyDirection,l),this.object.updateMatrixWorld(),r=!!l}else if(this.object.isOrthographicCamera){const o=new I(this._mouse.x,this._mouse.y,0);o.unproject(this.object);const l=this.object.zoom;this.object.zoom=Math.max(this.minZoom,Math.min(this.maxZoom,this.object.zoom/this._scale)),this.object.updateProjectionMatrix(),r=l!==this.object.zoom;const c=new I(this._mouse.x,this._mouse.y,0);c.unproject(this.object),this.object.position.sub(c).add(o),this.object.updateMatrixWorld(),a=be.length()}else console.warn("WARNING: OrbitControls.js encountered an unknown camera type - zoom to cursor disabled."),this.zoomToCursor=!1;a!==null&&(this.screenSpacePanning?this.target.set(0,0,-1).transformDirection(this.object.matrix).multiplyScalar(a).add(this.object.position):(Cr.origin.copy(this.object.position),Cr.direction.set(0,0,-1).transformDirection(this.object.matrix),Math.abs(this.object.up.dot(Cr.direction))<Ux?this.object.lookAt(this.target):(Ou.setFromNormalAndCoplanarPoint(this.object.up,this.target),Cr.intersectPlane(Ou,this.target))))}else if(this.object.isOrthographicCamera){const a=this.object.zoom;this.object.zoom=Math.max(this.minZoom,Math.min(this.maxZoom,this.object.zoom/this._scale)),a!==this.object.zoom&&(this.object.updateProjectionMatrix(),r=!0)}return this._scale=1,this._performCursorZoom=!1,r||this._lastPosition.distanceToSquared(this.object.position)>uo||8*(1-this._lastQuaternion.dot(this.object.quaternion))>uo||this._lastTargetPosition.distanceToSquared(this.target)>uo?(this.dispatchEvent(Fu),this._lastPosition.copy(this.object.position),this._lastQuaternion.copy(this.object.quaternion),this._lastTargetPosition.copy(this.target),!0):!1}_getAutoRotationAngle(t){return t!==null?sn/60*this.autoRotateSpeed*t:sn/60/60*this.autoRotateSpeed}_getZoomScale(t){const e=Math.abs(t*.01);return Math.pow(.95,this.zoomSpeed*e)}_rotateLeft(t){this._sphericalDelta.theta-=t}_rotateUp(t){this._sphericalDelta.phi-=t}_panLeft(t,e){be.setFromMatrixColumn(e,0),be.multiplyScalar(-t),this._panOffset.add(be)}_panUp(t,e){this.screenSpacePanning===!0?be.setFromMatrixColumn(e,1):(be.setFromMatrixColumn(e,0),be.crossVectors(this.object.up,be)),be.multiplyScalar(t),this._panOffset.add(be)}_pan(t,e){const i=this.domElement;if(this.object.isPerspectiveCamera){const s=this.object.position;be.copy(s).sub(this.target);let r=be.length();r*=Math.tan(this.object.fov/2*Math.PI/180),this._panLeft(2*t*r/i.clientHeight,this.object.matrix),this._panUp(2*e*r/i.clientHeight,this.object.matrix)}else this.object.isOrthographicCamera?(this._panLeft(t*(this.object.right-this.object.left)/this.object.zoom/i.clientWidth,this.object.matrix),this._panUp(e*(this.object.top-this.object.bottom)/this.object.zoom/i.clientHeight,this.object.matrix)):(console.warn("WARNING: OrbitControls.js encountered an unknown camera type - pan disabled."),this.enablePan=!1)}_dollyOut(t){this.object.isPerspectiveCamera||this.object.isOrthographicCamera?this._scale/=t:(console.warn("WARNING: OrbitControls.js encountered an unknown camera type - dolly/zoom disabled."),this.enableZoom=!1)}_dollyIn(t){this.object.isPerspectiveCamera||this.object.isOrthographicCamera?this._scale*=t:(console.warn("WARNING: OrbitControls.js encountered an unknown camera type - dolly/zoom disabled."),this.enableZoom=!1)}_updateZoomParameters(t,e){if(!this.zoomToCursor)return;this._performCursorZoom=!0;const i=this.domElement.getBoundingClientRect(),s=t-i.left,r=e-i.top,a=i.width,o=i.height;this._mouse.x=s/a*2-1,this._mouse.y=-(r/o)*2+1,this._dollyDirection.set(this._mouse.x,this._mouse.y,1).unproject(this.object).sub(this.object.position).normalize()}_clampDistance(t){return Math.max(this.minDistance,Math.min(this.maxDistance,t))}_handleMouseDownRotate(t){this._rotateStart.set(t.clientX,t.clientY)}_handleMouseDownDolly(t){this._updateZoomParameters(t.clientX,t.clientY),this._dollyStart.set(t.clientX,t.clientY)}_handleMouseDownPan(t){this._panStart.set(t.clientX,t.clientY)}_handleMouseMoveRotate(t){this._rotateEnd.set(t.clientX,t.clientY),this._rotateDelta.subVectors(this._rotateEnd,this._rotateStart).multiplyScalar(this.rotateSpeed);const e=this.domElement;this._rotateLeft(sn*this._rotateDelta.x/e.clientHeight),this._rotateUp(sn*this._rotateDelta.y/e.clientHeight),this._rotateStart.copy(this._rotateEnd),this.update()}_handleMouseMoveDolly(t){this._dollyEnd.set(t.clientX,t.clientY),this._dollyDelta.subVectors(this._dollyEnd,this._dollyStart),this._dollyDelta.y>0?this._dollyOut(this._getZoomScale(this._dollyDelta.y)):this._dollyDelta.y<0&&this._dollyIn(this._getZoomScale(this._dollyDelta.y)),this._dollyStart.copy(this._dollyEnd),this.zoomToCursor&&(this._performCursorZoom=!0,this._dollyDirection.set(this._mouse.x,this._mouse.y,1).unproject(this.object).sub(this.object.position).normalize()),this.update()}_handleMouseMovePan(t){this._panEnd.set(t.clientX,t.clientY),this._panDelta.subVectors(this._panEnd,this._panStart).multiplyScalar(this.panSpeed),this._pan(this._panDelta.x,this._panDelta.y),this._panStart.copy(this._panEnd),this.update()}_handleMouseWheel(t){this._updateZoomParameters(t.clientX,t.clientY),t.deltaY<0?this._dollyIn(this._getZoomScale(t.deltaY)):t.deltaY>0&&this._dollyOut(this._getZoomScale(t.deltaY)),this.update()}_handleKeyDown(t){let e=!1;switch(t.code){case this.keys.UP:t.ctrlKey||t.metaKey||t.shiftKey?this.enableRotate&&this._rotateUp(sn*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(0,this.keyPanSpeed),e=!0;break;case this.keys.BOTTOM:t.ctrlKey||t.metaKey||t.shiftKey?this.enableRotate&&this._rotateUp(-sn*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(0,-this.keyPanSpeed),e=!0;break;case this.keys.LEFT:t.ctrlKey||t.metaKey||t.shiftKey?this.enableRotate&&this._rotateLeft(sn*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(this.keyPanSpeed,0),e=!0;break;case this.keys.RIGHT:t.ctrlKey||t.metaKey||t.shiftKey?this.enableRotate&&this._rotateLeft(-sn*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(-this.keyPanSpeed,0),e=!0;break}e&&(t.preventDefault(),this.update())}_handleTouchStartRotate(t){if(this._pointers.length===1)this._rotateStart.set(t.pageX,t.pageY);else{const e=this._getSecondPointerPosition(t),i=.5*(t.pageX+e.x),s=.5*(t.pageY+e.y);this._rotateStart.set(i,s)}}_handleTouchStartPan(t){if(this._pointers.length===1)this._panStart.set(t.pageX,t.pageY);else{const e=this._getSecondPointerPosition(t),i=.5*(t.pageX+e.x),s=.5*(t.pageY+e.y);this._panStart.set(i,s)}}_handleTouchStartDolly(t){const e=this._getSecondPointerPosition(t),i=t.pageX-e.x,s=t.pageY-e.y,r=Math.sqrt(i*i+s*s);this._dollyStart.set(0,r)}_handleTouchStartDollyPan(t){this.enableZoom&&this._handleTouchStartDolly(t),this.enablePan&&this._handleTouchStartPan(t)}_handleTouchStartDollyRotate(t){this.enableZoom&&this._handleTouchStartDolly(t),this.enableRotate&&this._handleTouchStartRotate(t)}_handleTouchMoveRotate(t){if(this._pointers.length==1)this._rotateEnd.set(t.pageX,t.pageY);else{const i=this._getSecondPointerPosition(t),s=.5*(t.pageX+i.x),r=.5*(t.pageY+i.y);this._rotateEnd.set(s,r)}this._rotateDelta.subVectors(this._rotateEnd,this._rotateStart).multiplyScalar(this.rotateSpeed);const e=this.domElement;this._rotateLeft(sn*this._rotateDelta.x/e.clientHeight),this._rotateUp(sn*this._rotateDelta.y/e.clientHeight),this._rotateStart.copy(this._rotateEnd)}_handleTouchMovePan(t){if(this._pointers.length===1)this._panEnd.set(t.pageX,t.pageY);else{const e=this._getSecondPointerPosition(t),i=.5*(t.pageX+e.x),s=.5*(t.pageY+e.y);this._panEnd.set(i,s)}this._panDelta.subVectors(this._panEnd,this._panStart).multiplyScalar(this.panSpeed),this._pan(this._panDelta.x,this._panDelta.y),this._panStart.copy(this._panEnd)}_handleTouchMoveDolly(t){const e=this._getSecondPointerPosition(t),i=t.pageX-e.x,s=t.pageY-e.y,r=Math.sqrt(i*i+s*s);this._dollyEnd.set(0,r),this._dollyDelta.set(0,Math.pow(this._dollyEnd.y/this._dollyStart.y,this.zoomSpeed)),this._dollyOut(this._dollyDelta.y),this._dollyStart.copy(this._dollyEnd);const a=(t.pageX+e.x)*.5,o=(t.pageY+e.y)*.5;this._updateZoomParameters(a,o)}_handleTouchMoveDollyPan(t){this.enableZoom&&this._handleTouchMoveDolly(t),this.enablePan&&this._handleTouchMovePan(t)}_handleTouchMoveDollyRotate(t){this.enableZoom&&this._handleTouchMoveDolly(t),this.enableRotate&&this._handleTouchMoveRotate(t)}_addPointer(t){this._pointers.push(t.pointerId)}_removePointer(t){delete this._pointerPositions[t.pointerId];for(let e=0;e<this._pointers.length;e++)if(this._pointers[e]==t.pointerId){this._pointers.splice(e,1);return}}_isTrackingPointer(t){for(let e=0;e<this._pointers.length;e++)if(this._pointers[e]==t.pointerId)return!0;return!1}_trackPointer(t){let e=this._pointerPositions[t.pointerId];e===void 0&&(e=new Rt,this._pointerPositions[t.pointerId]=e),e.set(t.pageX,t.pageY)}_getSecondPointerPosition(t){const e=t.pointerId===this._pointers[0]?this._pointers[1]:this._pointers[0];return this._pointerPositions[e]}_customWheelEvent(t){const e=t.deltaMode,i={clientX:t.clientX,clientY:t.clientY,deltaY:t.deltaY};switch(e){case 1:i.deltaY*=16;break;case 2:i.deltaY*=100;break}return t.ctrlKey&&!this._controlActive&&(i.deltaY*=10),i}}function Ox(n){this.enabled!==!1&&(this._pointers.length===0&&(this.domElement.setPointerCapture(n.pointerId),this.domElement.ownerDocument.addEventListener("pointermove",this._onPointerMove),this.domElement.ownerDocument.addEventListener("pointerup",this._onPointerUp)),!this._isTrackingPointer(n)&&(this._addPointer(n),n.pointerType==="touch"?this._onTouchStart(n):this._onMouseDown(n),this._cursorStyle==="grab"&&(this.domElement.style.cursor="grabbing")))}function Bx(n){this.enabled!==!1&&(n.pointerType==="touch"?this._onTouchMove(n):this._onMouseMove(n))}function zx(n){switch(this._removePointer(n),this._pointers.length){case 0:this.domElement.releasePointerCapture(n.pointerId),this.domElement.ownerDocument.removeEventListener("pointermove",this._onPointerMove),this.domElement.ownerDocument.removeEventListener("pointerup",this._onPointerUp),this.dispatchEvent(bd),this.state=Qt.NONE,this._cursorStyle==="grab"&&(this.domElement.style.cursor="grab");break;case 1:const t=this._pointers[0],e=this._pointerPositions[t];this._onTouchStart({pointerId:t,pageX:e.x,pageY:e.y});break}}function kx(n){let t;switch(n.button){case 0:t=this.mouseButtons.LEFT;break;case 1:t=this.mouseButtons.MIDDLE;break;case 2:t=this.mouseButtons.RIGHT;break;default:t=-1}switch(t){case fs.DOLLY:if(this.enableZoom===!1)return;this._handleMouseDownDolly(n),this.state=Qt.DOLLY;break;case fs.ROTATE:if(n.ctrlKey||n.metaKey||n.shiftKey){if(this.enablePan===!1)return;this._handleMouseDownPan(n),this.state=Qt.PAN}else{if(this.enableRotate===!1)return;this._handleMouseDownRotate(n),this.state=Qt.ROTATE}break;case fs.PAN:if(n.ctrlKey||n.metaKey||n.shiftKey){if(this.enableRotate===!1)return;this._handleMouseDownRotate(n),this.state=Qt.ROTATE}else{if(this.enablePan===!1)return;this._handleMouseDownPan(n),this.state=Qt.PAN}break;default:this.state=Qt.NONE}this.state!==Qt.NONE&&this.dispatchEvent(Jl)}function Hx(n){switch(this.state){case Qt.ROTATE:if(this.enableRotate===!1)return;this._handleMouseMoveRotate(n);break;case Qt.DOLLY:if(this.enableZoom===!1)return;this._handleMouseMoveDolly(n);break;case Qt.PAN:if(this.enablePan===!1)return;this._handleMouseMovePan(n);break}}function Gx(n){this.enabled===!1||this.enableZoom===!1||this.state!==Qt.NONE||(n.preventDefault(),this.dispatchEvent(Jl),this._handleMouseWheel(this._customWheelEvent(n)),this.dispatchEvent(bd))}function Vx(n){this.enabled!==!1&&this._handleKeyDown(n)}function Wx(n){switch(this._trackPointer(n),this._pointers.length){case 1:switch(this.touches.ONE){case hs.ROTATE:if(this.enableRotate===!1){this.state=Qt.NONE;break}this._handleTouchStartRotate(n),this.state=Qt.TOUCH_ROTATE;break;case hs.PAN:if(this.enablePan===!1){this.state=Qt.NONE;break}this._handleTouchStartPan(n),this.state=Qt.TOUCH_PAN;break;default:this.state=Qt.NONE}break;case 2:switch(this.touches.TWO){case hs.DOLLY_PAN:if(this.enableZoom===!1&&this.enablePan===!1)return;this._handleTouchStartDollyPan(n),this.state=Qt.TOUCH_DOLLY_PAN;break;case hs.DOLLY_ROTATE:if(this.enableZoom===!1&&this.enableRotate===!1)return;this._handleTouchStartDollyRotate(n),this.state=Qt.TOUCH_DOLLY_ROTATE;break;default:this.state=Qt.NONE}break;default:this.state=Qt.NONE}this.state!==Qt.NONE&&this.dispatchEvent(Jl)}function Xx(n){switch(this._trackPointer(n),this.state){case Qt.TOUCH_ROTATE:if(this.enableRotate===!1)return;this._handleTouchMoveRotate(n),this.update();break;case Qt.TOUCH_PAN:if(this.enablePan===!1)return;this._handleTouchMovePan(n),this.update();break;case Qt.TOUCH_DOLLY_PAN:if(this.enableZoom===!1&&this.enablePan===!1)return;this._handleTouchMoveDollyPan(n),this.update();break;case Qt.TOUCH_DOLLY_ROTATE:if(this.enableZoom===!1&&this.enableRotate===!1)return;this._handleTouchMoveDollyRotate(n),this.update();break;default:this.state=Qt.NONE}}function qx(n){this.enabled!==!1&&n.preventDefault()}function $x(n){n.key==="Control"&&(this._controlActive=!0,this.domElement.ownerDocument.addEventListener("keyup",this._interceptControlUp,{passive:!0,capture:!0}))}function Yx(n){n.key==="Control"&&(this._controlActive=!1,this.domElement.ownerDocument.removeEventListener("keyup",this._interceptControlUp,{passive:!0,capture:!0}))}const Td=0,Kx=1,Zx=2,Bu=2,ho=1.25,zu=1,un=32,ve=un/4,wd=65535,oa=Math.pow(2,-24),Ql=Symbol("SKIP_GENERATION"),Ad={strategy:Td,maxDepth:40,targetLeafSize:10,useSharedArrayBuffer:!1,setBoundingBox:!0,onProgress:null,indirect:!1,verbose:!0,range:null,[Ql]:!1};function de(n,t,e){return e.min.x=t[n],e.min.y=t[n+1],e.min.z=t[n+2],e.max.x=t[n+3],e.max.y=t[n+4],e.max.z=t[n+5],e}function Ml(n){let t=-1,e=-1/0;for(let i=0;i<3;i++){const s=n[i+3]-n[i];s>e&&(e=s,t=i)}return t}function ku(n,t,e){for(let i=0;i<3;i++){const s=t[n+2*i],r=t[n+2*i+1],a=s-r,o=s+r;a<e[i]&&(e[i]=a),o>e[i+3]&&(e[i+3]=o)}}function fo(n){const t=n[3]-n[0],e=n[4]-n[1],i=n[5]-n[2];return 2*(t*e+e*i+i*t)}function me(n,t){return t[n+15]===wd}function Ie(n,t){return t[n+6]}function Ye(n,t){return t[n+14]}function Te(n){return n+ve}function we(n,t){const e=t[n+6];return n+e*ve}function jl(n,t){return t[n+7]}function po(n,t,e,i,s){let r=1/0,a=1/0,o=1/0,l=-1/0,c=-1/0,h=-1/0,d=1/0,u=1/0,f=1/0,g=-1/0,S=-1/0,m=-1/0;const p=n.offset||0;for(let x=(t-p)*6,y=(t+e-p)*6;x<y;x+=6){const v=n[x+0],M=n[x+1],A=v-M,_=v+M;A<r&&(r=A),_>l&&(l=_),v<d&&(d=v),v>g&&(g=v);const E=n[x+2],D=n[x+3],w=E-D,P=E+D;w<a&&(a=w),P>c&&(c=P),E<u&&(u=E),E>S&&(S=E);const N=n[x+4],F=n[x+5],C=N-F,B=N+F;C<o&&(o=C),B>h&&(h=B),N<f&&(f=N),N>m&&(m=N)}i[0]=r,i[1]=a,i[2]=o,i[3]=l,i[4]=c,i[5]=h,s[0]=d,s[1]=u,s[2]=f,s[3]=g,s[4]=S,s[5]=m}const Fn=8,tc=8,mo=new Int32Array(Fn),Un=new Float32Array(Fn*6),ji=new Float32Array(Fn*6),An=new Float32Array(6),Pr=new Float32Array(6),di=new Int32Array(tc),Hu=new Float32Array(tc*6);function Jx(n,t,e,i){for(let s=0;s<3;s++){const r=t[n+2*s],a=t[n+2*s+1],o=r-a,l=r+a;o<e[i+s]&&(e[i+s]=o),l>e[i+s+3]&&(e[i+s+3]=l)}}function Gu(n,t){const e=n[t+3]-n[t],i=n[t+4]-n[t+1],s=n[t+5]-n[t+2];return 2*(e*i+i*s+s*e)}function Qx(n,t,e,i,s,r){let a=-1,o=0;if(r===Td)a=Ml(t),a!==-1&&(o=(t[a]+t[a+3])/2);else if(r===Kx)a=Ml(n),a!==-1&&(o=jx(e,i,s,a));else if(r===Zx){const l=fo(n);let c=ho*s;const h=e.offset||0,d=(i-h)*6,u=(i+s-h)*6;for(let f=0;f<3;f++){const g=t[f],p=(t[f+3]-g)/Fn;if(s<tc){for(let x=0;x<s;x++){const y=d+x*6,v=e[y+2*f];let M=x;for(;M>0&&e[di[M-1]+2*f]>v;)di[M]=di[M-1],M--;di[M]=y}for(let x=0;x<3;x++)An[x]=1/0,An[x+3]=-1/0,Pr[x]=1/0,Pr[x+3]=-1/0;for(let x=s-1;x>=0;x--)ku(di[x],e,Pr),Hu.set(Pr,x*6);for(let x=0;x<s-1;x++){ku(di[x],e,An);const y=e[di[x+1]+2*f];if(e[di[x]+2*f]===y)continue;const v=x+1,M=s-v,A=fo(An)/l,_=Gu(Hu,v*6)/l,E=zu+ho*(A*v+_*M);E<c&&(a=f,c=E,o=y)}}else{for(let v=0;v<Fn;v++){mo[v]=0;for(let M=0;M<3;M++)Un[v*6+M]=1/0,Un[v*6+M+3]=-1/0}for(let v=d;v<u;v+=6){let _=~~((e[v+2*f]-g)/p);_>=Fn&&(_=Fn-1),mo[_]++,Jx(v,e,Un,_*6)}const x=(Fn-1)*6;for(let v=0;v<6;v++)ji[x+v]=Un[x+v];for(let v=Fn-2;v>=0;v--){const M=v*6,A=M+6;for(let _=0;_<3;_++)ji[M+_]=Math.min(Un[M+_],ji[A+_]),ji[M+_+3]=Math.max(Un[M+_+3],ji[A+_+3])}let y=0;for(let v=0;v<Fn-1;v++){const M=v*6,A=mo[v];if(A!==0)for(let P=0;P<3;P++)y===0?(An[P]=Un[M+P],An[P+3]=Un[M+P+3]):(An[P]=Math.min(An[P],Un[M+P]),An[P+3]=Math.max(An[P+3],Un[M+P+3]));y+=A;let _=0,E=0;y!==0&&(_=fo(An)/l);const D=s-y;D!==0&&(E=Gu(ji,M+6)/l);const w=zu+ho*(_*y+E*D);w<c&&(a=f,c=w,o=g+p+v*p)}}}}else console.warn(`BVH: Invalid build strategy value ${r} used.`);return{axis:a,pos:o}}function jx(n,t,e,i){let s=0;const r=n.offset;for(let a=t,o=t+e;a<o;a++)s+=n[(a-r)*6+i*2];return s/e}function tv(n,t,e,i,s,r){let a=i,o=i+s-1;const l=r.pos,c=r.axis*2,h=e.offset||0;for(;;){for(;a<=o&&e[(a-h)*6+c]<l;)a++;for(;a<=o&&e[(o-h)*6+c]>=l;)o--;if(a<o){for(let d=0;d<t;d++){let u=n[a*t+d];n[a*t+d]=n[o*t+d],n[o*t+d]=u}for(let d=0;d<6;d++){const u=a-h,f=o-h,g=e[u*6+d];e[u*6+d]=e[f*6+d],e[f*6+d]=g}a++,o--}else return a}}const ev=Math.pow(2,32),ts=new Float32Array(6),Lr=new Float32Array(6);function nv(n,t,e,i,s,r){const{maxDepth:a,verbose:o,targetLeafSize:l,_strictLeafSize:c=1/0,strategy:h,onProgress:d,useSharedArrayBuffer:u=!1}=s,f=n.primitiveBuffer,g=n.primitiveBufferStride,S=u?SharedArrayBuffer:ArrayBuffer,m=new S(un*Math.max(1,2*Math.ceil(i)-1)),p=new Float32Array(m),x=new Uint32Array(m),y=new Uint16Array(m);let v=0,M=!1;return po(t,e,i,ts,Lr),E(e,i,0),m.slice(0,v*un);function A(D){d&&d((D-r.offset)/r.count)}function _(D,w,P){const N=D*2;x[D+6]=w,y[N+14]=P,y[N+15]=wd,A(w+P)}function E(D,w,P){const N=v++,F=N*ve;p.set(ts,F),!M&&P>=a&&(M=!0,o&&console.warn(`BVH: Max depth of ${a} reached when generating BVH. Consider increasing maxDepth.`));const C=w>c;if(w<=l&&!C||P>=a){_(F,D,w);return}const B=Qx(ts,Lr,t,D,w,h);let W=B.axis===-1?-1:tv(f,g,t,D,w,B);if(B.axis===-1||W===D||W===D+w){if(!C){_(F,D,w);return}B.axis=Math.max(0,Ml(ts)),W=D+Math.max(1,Math.floor(w/2))}x[F+7]=B.axis;const k=W-D;po(t,D,k,ts,Lr),E(D,k,P+1);const et=v-N;if(et>ev)throw new Error("MeshBVH: Cannot store relative child node offset greater than 32 bits.");x[F+6]=et;const q=w-k;po(t,W,q,ts,Lr),E(W,q,P+1)}}function iv(n,t){const e=n.getRootRanges(t.range),i=e[0],s=e[e.length-1],r={offset:i.offset,count:s.offset+s.count-i.offset},a=new Float32Array(6*r.count);a.offset=r.offset,n.computePrimitiveBounds(r.offset,r.count,a),n._roots=e.map(o=>nv(n,a,o.offset,o.count,t,r))}class ec{constructor(t){this._getNewPrimitive=t,this._primitives=[]}getPrimitive(){const t=this._primitives;return t.length===0?this._getNewPrimitive():t.pop()}releasePrimitive(t){this._primitives.push(t)}}class sv{constructor(){this.float32Array=null,this.uint16Array=null,this.uint32Array=null;const t=[];let e=null;this.setBuffer=i=>{e&&t.push(e),e=i,this.float32Array=new Float32Array(i),this.uint16Array=new Uint16Array(i),this.uint32Array=new Uint32Array(i)},this.clearBuffer=()=>{e=null,this.float32Array=null,this.uint16Array=null,this.uint32Array=null,t.length!==0&&this.setBuffer(t.pop())}}}const ee=new sv;let vi,ds;const es=[],Dr=new ec(()=>new tn);function rv(n,t,e,i,s,r){vi=Dr.getPrimitive(),ds=Dr.getPrimitive(),es.push(vi,ds),ee.setBuffer(n._roots[t]);const a=yl(0,n.geometry,e,i,s,r);ee.clearBuffer(),Dr.releasePrimitive(vi),Dr.releasePrimitive(ds),es.pop(),es.pop();const o=es.length;return o>0&&(ds=es[o-1],vi=es[o-2]),a}function yl(n,t,e,i,s=null,r=0,a=0){const{float32Array:o,uint16Array:l,uint32Array:c}=ee;let h=n*2;if(me(h,l)){const g=Ie(n,c),S=Ye(h,l);return de(n,o,vi),i(g,S,!1,a,r+n/ve,vi)}else{let N=function(C){const{uint16Array:B,uint32Array:W}=ee;let k=C*2;for(;!me(k,B);)C=Te(C),k=C*2;return Ie(C,W)},F=function(C){const{uint16Array:B,uint32Array:W}=ee;let k=C*2;for(;!me(k,B);)C=we(C,W),k=C*2;return Ie(C,W)+Ye(k,B)};var u=N,f=F;const g=Te(n),S=we(n,c);let m=g,p=S,x,y,v,M;if(s&&(v=vi,M=ds,de(m,o,v),de(p,o,M),x=s(v),y=s(M),y<x)){m=S,p=g;const C=x;x=y,y=C,v=M}v||(v=vi,de(m,o,v));const A=me(m*2,l),_=e(v,A,x,a+1,r+m/ve);let E;if(_===Bu){const C=N(m),W=F(m)-C;E=i(C,W,!0,a+1,r+m/ve,v)}else E=_&&yl(m,t,e,i,s,r,a+1);if(E)return!0;M=ds,de(p,o,M);const D=me(p*2,l),w=e(M,D,y,a+1,r+p/ve);let P;if(w===Bu){const C=N(p),W=F(p)-C;P=i(C,W,!0,a+1,r+p/ve,M)}else P=w&&yl(p,t,e,i,s,r,a+1);return!!P}}const zs=new ee.constructor,Ma=new ee.constructor,mi=new ec(()=>new tn),ns=new tn,is=new tn,_o=new tn,go=new tn;let xo=!1;function av(n,t,e,i){if(xo)throw new Error("MeshBVH: Recursive calls to bvhcast not supported.");xo=!0;const s=n._roots,r=t._roots;let a,o=0,l=0;const c=new $t().copy(e).invert();for(let h=0,d=s.length;h<d;h++){zs.setBuffer(s[h]),l=0;const u=mi.getPrimitive();de(0,zs.float32Array,u),u.applyMatrix4(c);for(let f=0,g=r.length;f<g&&(Ma.setBuffer(r[f]),a=Rn(0,0,e,c,i,o,l,0,0,u),Ma.clearBuffer(),l+=r[f].byteLength/un,!a);f++);if(mi.releasePrimitive(u),zs.clearBuffer(),o+=s[h].byteLength/un,a)break}return xo=!1,a}function Rn(n,t,e,i,s,r=0,a=0,o=0,l=0,c=null,h=!1){let d,u;h?(d=Ma,u=zs):(d=zs,u=Ma);const f=d.float32Array,g=d.uint32Array,S=d.uint16Array,m=u.float32Array,p=u.uint32Array,x=u.uint16Array,y=n*2,v=t*2,M=me(y,S),A=me(v,x);let _=!1;if(A&&M)h?_=s(Ie(t,p),Ye(t*2,x),Ie(n,g),Ye(n*2,S),l,a+t/ve,o,r+n/ve):_=s(Ie(n,g),Ye(n*2,S),Ie(t,p),Ye(t*2,x),o,r+n/ve,l,a+t/ve);else if(A){const E=mi.getPrimitive();de(t,m,E),E.applyMatrix4(e);const D=Te(n),w=we(n,g);de(D,f,ns),de(w,f,is);const P=E.intersectsBox(ns),N=E.intersectsBox(is);_=P&&Rn(t,D,i,e,s,a,r,l,o+1,E,!h)||N&&Rn(t,w,i,e,s,a,r,l,o+1,E,!h),mi.releasePrimitive(E)}else{const E=Te(t),D=we(t,p);de(E,m,_o),de(D,m,go);const w=c.intersectsBox(_o),P=c.intersectsBox(go);if(w&&P)_=Rn(n,E,e,i,s,r,a,o,l+1,c,h)||Rn(n,D,e,i,s,r,a,o,l+1,c,h);else if(w)if(M)_=Rn(n,E,e,i,s,r,a,o,l+1,c,h);else{const N=mi.getPrimitive();N.copy(_o).applyMatrix4(e);const F=Te(n),C=we(n,g);de(F,f,ns),de(C,f,is);const B=N.intersectsBox(ns),W=N.intersectsBox(is);_=B&&Rn(E,F,i,e,s,a,r,l,o+1,N,!h)||W&&Rn(E,C,i,e,s,a,r,l,o+1,N,!h),mi.releasePrimitive(N)}else if(P)if(M)_=Rn(n,D,e,i,s,r,a,o,l+1,c,h);else{const N=mi.getPrimitive();N.copy(go).applyMatrix4(e);const F=Te(n),C=we(n,g);de(F,f,ns),de(C,f,is);const B=N.intersectsBox(ns),W=N.intersectsBox(is);_=B&&Rn(D,F,i,e,s,a,r,l,o+1,N,!h)||W&&Rn(D,C,i,e,s,a,r,l,o+1,N,!h),mi.releasePrimitive(N)}}return _}const vo=new class{constructor(){let n=null,t=null,e=null,i=!1;this.root=null,this.buffer=null,this.uint32Array=null,this.uint16Array=null,this.setBVH=(r,a)=>{if(i)throw new Error("BVHTraversalHelper: cannot call setBVH during an active traversal.");this.root=a,this.buffer=n=r._roots[a],this.uint16Array=e=new Uint16Array(n),this.uint32Array=t=new Uint32Array(n)},this.reset=()=>{this.root=null,this.buffer=n=null,this.uint16Array=e=null,this.uint32Array=t=null},this.getRangeStart=r=>{let a=r*2;for(;!me(a,e);)r=Te(r),a=r*2;return Ie(r,t)},this.getRangeEnd=r=>{let a=r*2;for(;!me(a,e);)r=we(r,t),a=r*2;return Ie(r,t)+Ye(a,e)};const s=(r,a,o)=>{const l=a*2,c=me(l,e);if(!r(o,c,a)&&!c){const d=Te(a),u=we(a,t);s(r,d,o+1),s(r,u,o+1)}};this.traverseBuffer=r=>{if(i)throw new Error("BVHTraversalHelper: cannot start a traversal during an active traversal.");i=!0;try{s(r,0,0)}finally{i=!1}},this.traverse=r=>{this.traverseBuffer((a,o,l)=>{if(o){const c=l*2,h=t[l+6],d=e[c+14];return r(a,o,new Float32Array(n,l*4,6),h,d)}else{const c=jl(l,t);return r(a,o,new Float32Array(n,l*4,6),c)}})}}},Vu=new tn,ss=new Float32Array(6);class ov{constructor(){this._roots=null,this.primitiveBuffer=null,this.primitiveBufferStride=null}init(t){t={...Ad,...t},"maxLeafSize"in t&&(console.warn('BVH: "maxLeafSize" option has been deprecated. Use "targetLeafSize", instead.'),t={...t,targetLeafSize:t.maxLeafSize}),iv(this,t)}getRootRanges(){throw new Error("BVH: getRootRanges() not implemented")}writePrimitiveBounds(){throw new Error("BVH: writePrimitiveBounds() not implemented")}writePrimitiveRangeBounds(t,e,i,s){let r=1/0,a=1/0,o=1/0,l=-1/0,c=-1/0,h=-1/0;for(let d=t,u=t+e;d<u;d++){this.writePrimitiveBounds(d,ss,0);const[f,g,S,m,p,x]=ss;f<r&&(r=f),m>l&&(l=m),g<a&&(a=g),p>c&&(c=p),S<o&&(o=S),x>h&&(h=x)}return i[s+0]=r,i[s+1]=a,i[s+2]=o,i[s+3]=l,i[s+4]=c,i[s+5]=h,i}computePrimitiveBounds(t,e,i){const s=i.offset||0;for(let r=t,a=t+e;r<a;r++){this.writePrimitiveBounds(r,ss,0);const[o,l,c,h,d,u]=ss,f=(o+h)/2,g=(l+d)/2,S=(c+u)/2,m=(h-o)/2,p=(d-l)/2,x=(u-c)/2,y=(r-s)*6;i[y+0]=f,i[y+1]=m+(Math.abs(f)+m)*oa,i[y+2]=g,i[y+3]=p+(Math.abs(g)+p)*oa,i[y+4]=S,i[y+5]=x+(Math.abs(S)+x)*oa}return i}shiftPrimitiveOffsets(t){const e=this._indirectBuffer;if(e)for(let i=0,s=e.length;i<s;i++)e[i]+=t;else{const i=this._roots;for(let s=0;s<i.length;s++){const r=i[s],a=new Uint32Array(r),o=new Uint16Array(r),l=r.byteLength/un;for(let c=0;c<l;c++){const h=ve*c,d=2*h;me(d,o)&&(a[h+6]+=t)}}}}traverse(t,e=0){vo.setBVH(this,e),vo.traverse(t),vo.reset()}refit(){const t=this._roots;for(let e=0,i=t.length;e<i;e++){const s=t[e],r=new Uint32Array(s),a=new Uint16Array(s),o=new Float32Array(s),l=s.byteLength/un;for(let c=l-1;c>=0;c--){const h=c*ve,d=h*2;if(me(d,a)){const f=Ie(h,r),g=Ye(d,a);this.writePrimitiveRangeBounds(f,g,ss,0),o.set(ss,h)}else{const f=Te(h),g=we(h,r);for(let S=0;S<3;S++){const m=o[f+S],p=o[f+S+3],x=o[g+S],y=o[g+S+3];o[h+S]=m<x?m:x,o[h+S+3]=p>y?p:y}}}}}getBoundingBox(t){return t.makeEmpty(),this._roots.forEach(i=>{de(0,new Float32Array(i),Vu),t.union(Vu)}),t}shapecast(t){let{boundsTraverseOrder:e,intersectsBounds:i,intersectsRange:s,intersectsPrimitive:r,scratchPrimitive:a,iterate:o}=t;if(s&&r){const d=s;s=(u,f,g,S,m)=>d(u,f,g,S,m)?!0:o(u,f,this,r,g,S,a)}else s||(r?s=(d,u,f,g)=>o(d,u,this,r,f,g,a):s=(d,u,f)=>f);let l=!1,c=0;const h=this._roots;for(let d=0,u=h.length;d<u;d++){const f=h[d];if(l=rv(this,d,i,s,e,c),l)break;c+=f.byteLength/un}return l}bvhcast(t,e,i){let{intersectsRanges:s}=i;return av(this,t,e,s)}}function lv(){return typeof SharedArrayBuffer<"u"}function nc(n){return n.index?n.index.count:n.attributes.position.count}function Ra(n){return nc(n)/3}function cv(n,t=ArrayBuffer){return n>65535?new Uint32Array(new t(4*n)):new Uint16Array(new t(2*n))}function uv(n,t){if(!n.index){const e=n.attributes.position.count,i=t.useSharedArrayBuffer?SharedArrayBuffer:ArrayBuffer,s=cv(e,i);n.setIndex(new Ue(s,1));for(let r=0;r<e;r++)s[r]=r}}function hv(n,t,e){const i=nc(n)/e,s=t||n.drawRange,r=s.start/e,a=(s.start+s.count)/e,o=Math.max(0,r),l=Math.min(i,a)-o;return{offset:Math.floor(o),count:Math.floor(l)}}function dv(n,t){return n.groups.map(e=>({offset:e.start/t,count:e.count/t}))}function Wu(n,t,e){const i=hv(n,t,e),s=dv(n,e);if(!s.length)return[i];const r=[],a=i.offset,o=i.offset+i.count,l=nc(n)/e,c=[];for(const u of s){const{offset:f,count:g}=u,S=f,m=isFinite(g)?g:l-f,p=f+m;S<o&&p>a&&(c.push({pos:Math.max(a,S),isStart:!0}),c.push({pos:Math.min(o,p),isStart:!1}))}c.sort((u,f)=>u.pos!==f.pos?u.pos-f.pos:u.type==="end"?-1:1);let h=0,d=null;for(const u of c){const f=u.pos;h!==0&&f!==d&&r.push({offset:d,count:f-d}),h+=u.isStart?1:-1,d=f}return r}function fv(n,t){const e=n[n.length-1],i=e.offset+e.count>2**16,s=n.reduce((c,h)=>c+h.count,0),r=i?4:2,a=t?new SharedArrayBuffer(s*r):new ArrayBuffer(s*r),o=i?new Uint32Array(a):new Uint16Array(a);let l=0;for(let c=0;c<n.length;c++){const{offset:h,count:d}=n[c];for(let u=0;u<d;u++)o[l+u]=h+u;l+=d}return o}class pv extends ov{get indirect(){return!!this._indirectBuffer}get primitiveStride(){return null}get primitiveBufferStride(){return this.indirect?1:this.primitiveStride}set primitiveBufferStride(t){}get primitiveBuffer(){return this.indirect?this._indirectBuffer:this.geometry.index.array}set primitiveBuffer(t){}constructor(t,e={}){if(t.isBufferGeometry){if(t.index&&t.index.isInterleavedBufferAttribute)throw new Error("BVH: InterleavedBufferAttribute is not supported for the index attribute.")}else throw new Error("BVH: Only BufferGeometries are supported.");if(e.useSharedArrayBuffer&&!lv())throw new Error("BVH: SharedArrayBuffer is not available.");super(),this.geometry=t,this.resolvePrimitiveIndex=e.indirect?i=>this._indirectBuffer[i]:i=>i,this.primitiveBuffer=null,this.primitiveBufferStride=null,this._indirectBuffer=null,e={...Ad,...e},e[Ql]||this.init(e)}init(t){const{geometry:e,primitiveStride:i}=this;if(t.indirect){const s=Wu(e,t.range,i),r=fv(s,t.useSharedArrayBuffer);this._indirectBuffer=r}else uv(e,t);super.init(t),!e.boundingBox&&t.setBoundingBox&&(e.boundingBox=this.getBoundingBox(new tn))}getRootRanges(t){return this.indirect?[{offset:0,count:this._indirectBuffer.length}]:Wu(this.geometry,t,this.primitiveStride)}raycastObject3D(){throw new Error("BVH: raycastObject3D() not implemented")}}class si{constructor(){this.min=1/0,this.max=-1/0}setFromPointsField(t,e){let i=1/0,s=-1/0;for(let r=0,a=t.length;r<a;r++){const l=t[r][e];i=l<i?l:i,s=l>s?l:s}this.min=i,this.max=s}setFromPoints(t,e){let i=1/0,s=-1/0;for(let r=0,a=e.length;r<a;r++){const o=e[r],l=t.dot(o);i=l<i?l:i,s=l>s?l:s}this.min=i,this.max=s}isSeparated(t){return this.min>t.max||t.min>this.max}}si.prototype.setFromBox=(function(){const n=new I;return function(e,i){const s=i.min,r=i.max;let a=1/0,o=-1/0;for(let l=0;l<=1;l++)for(let c=0;c<=1;c++)for(let h=0;h<=1;h++){n.x=s.x*l+r.x*(1-l),n.y=s.y*c+r.y*(1-c),n.z=s.z*h+r.z*(1-h);const d=e.dot(n);a=Math.min(d,a),o=Math.max(d,o)}this.min=a,this.max=o}})();const mv=(function(){const n=new I,t=new I,e=new I;return function(s,r,a){const o=s.start,l=n,c=r.start,h=t;e.subVectors(o,c),n.subVectors(s.end,s.start),t.subVectors(r.end,r.start);const d=e.dot(h),u=h.dot(l),f=h.dot(h),g=e.dot(l),m=l.dot(l)*f-u*u;let p,x;m!==0?p=(d*u-g*f)/m:p=0,x=(d+p*u)/f,a.x=p,a.y=x}})(),ic=(function(){const n=new Rt,t=new I,e=new I;return function(s,r,a,o){mv(s,r,n);let l=n.x,c=n.y;if(l>=0&&l<=1&&c>=0&&c<=1){s.at(l,a),r.at(c,o);return}else if(l>=0&&l<=1){c<0?r.at(0,o):r.at(1,o),s.closestPointToPoint(o,!0,a);return}else if(c>=0&&c<=1){l<0?s.at(0,a):s.at(1,a),r.closestPointToPoint(a,!0,o);return}else{let h;l<0?h=s.start:h=s.end;let d;c<0?d=r.start:d=r.end;const u=t,f=e;if(s.closestPointToPoint(d,!0,t),r.closestPointToPoint(h,!0,e),u.distanceToSquared(d)<=f.distanceToSquared(h)){a.copy(u),o.copy(d);return}else{a.copy(h),o.copy(f);return}}}})(),_v=(function(){const n=new I,t=new I,e=new vn,i=new Vn;return function(r,a){const{radius:o,center:l}=r,{a:c,b:h,c:d}=a;if(i.start=c,i.end=h,i.closestPointToPoint(l,!0,n).distanceTo(l)<=o||(i.start=c,i.end=d,i.closestPointToPoint(l,!0,n).distanceTo(l)<=o)||(i.start=h,i.end=d,i.closestPointToPoint(l,!0,n).distanceTo(l)<=o))return!0;const S=a.getPlane(e);if(Math.abs(S.distanceToPoint(l))<=o){const p=S.projectPoint(l,t);if(a.containsPoint(p))return!0}return!1}})(),gv=["x","y","z"],Zn=1e-15,Xu=Zn*Zn;function gn(n){return Math.abs(n)<Zn}class Ln extends ze{constructor(...t){super(...t),this.isExtendedTriangle=!0,this.satAxes=new Array(4).fill().map(()=>new I),this.satBounds=new Array(4).fill().map(()=>new si),this.points=[this.a,this.b,this.c],this.plane=new vn,this.isDegenerateIntoSegment=!1,this.isDegenerateIntoPoint=!1,this.degenerateSegment=new Vn,this.needsUpdate=!0}intersectsSphere(t){return _v(t,this)}update(){const t=this.a,e=this.b,i=this.c,s=this.points,r=this.satAxes,a=this.satBounds,o=r[0],l=a[0];this.getNormal(o),l.setFromPoints(o,s);const c=r[1],h=a[1];c.subVectors(t,e),h.setFromPoints(c,s);const d=r[2],u=a[2];d.subVectors(e,i),u.setFromPoints(d,s);const f=r[3],g=a[3];f.subVectors(i,t),g.setFromPoints(f,s);const S=c.length(),m=d.length(),p=f.length();this.isDegenerateIntoPoint=!1,this.isDegenerateIntoSegment=!1,S<Zn?m<Zn||p<Zn?this.isDegenerateIntoPoint=!0:(this.isDegenerateIntoSegment=!0,this.degenerateSegment.start.copy(t),this.degenerateSegment.end.copy(i)):m<Zn?p<Zn?this.isDegenerateIntoPoint=!0:(this.isDegenerateIntoSegment=!0,this.degenerateSegment.start.copy(e),this.degenerateSegment.end.copy(t)):p<Zn&&(this.isDegenerateIntoSegment=!0,this.degenerateSegment.start.copy(i),this.degenerateSegment.end.copy(e)),this.plane.setFromNormalAndCoplanarPoint(o,t),this.needsUpdate=!1}}Ln.prototype.closestPointToSegment=(function(){const n=new I,t=new I,e=new Vn;return function(s,r=null,a=null){this.needsUpdate&&this.update();const{start:o,end:l}=s,c=this.points;let h,d=1/0;const u=this.plane.distanceToPoint(o),f=this.plane.distanceToPoint(l);if(u*f<0&&this.plane.intersectLine(s,n)!==null&&this.containsPoint(n))return r&&r.copy(n),a&&a.copy(n),0;for(let g=0;g<3;g++){const S=(g+1)%3;e.start.copy(c[g]),e.end.copy(c[S]),ic(e,s,n,t),h=n.distanceToSquared(t),h<d&&(d=h,r&&r.copy(n),a&&a.copy(t))}return this.closestPointToPoint(o,n),h=o.distanceToSquared(n),h<d&&(d=h,r&&r.copy(n),a&&a.copy(o)),this.closestPointToPoint(l,n),h=l.distanceToSquared(n),h<d&&(d=h,r&&r.copy(n),a&&a.copy(l)),Math.sqrt(d)}})();Ln.prototype.intersectsTriangle=(function(){const n=new Ln,t=new si,e=new si,i=new I,s=new I,r=new I,a=new I,o=new Vn,l=new Vn,c=new I,h=new Rt,d=new Rt;function u(y,v,M,A){const _=i;!y.isDegenerateIntoPoint&&!y.isDegenerateIntoSegment?_.copy(y.plane.normal):_.copy(v.plane.normal);const E=y.satBounds,D=y.satAxes;for(let N=1;N<4;N++){const F=E[N],C=D[N];if(t.setFromPoints(C,v.points),F.isSeparated(t)||(a.copy(_).cross(C),t.setFromPoints(a,y.points),e.setFromPoints(a,v.points),t.isSeparated(e)))return!1}const w=v.satBounds,P=v.satAxes;for(let N=1;N<4;N++){const F=w[N],C=P[N];if(t.setFromPoints(C,y.points),F.isSeparated(t)||(a.crossVectors(_,C),t.setFromPoints(a,y.points),e.setFromPoints(a,v.points),t.isSeparated(e)))return!1}return M&&(A||console.warn("ExtendedTriangle.intersectsTriangle: Triangles are coplanar which does not support an output edge. Setting edge to 0, 0, 0."),M.start.set(0,0,0),M.end.set(0,0,0)),!0}function f(y,v,M,A,_,E,D,w,P,N,F){let C=D/(D-w);N.x=A+(_-A)*C,F.start.subVectors(v,y).multiplyScalar(C).add(y),C=D/(D-P),N.y=A+(E-A)*C,F.end.subVectors(M,y).multiplyScalar(C).add(y)}function g(y,v,M,A,_,E,D,w,P,N,F){if(_>0)f(y.c,y.a,y.b,A,v,M,P,D,w,N,F);else if(E>0)f(y.b,y.a,y.c,M,v,A,w,D,P,N,F);else if(w*P>0||D!=0)f(y.a,y.b,y.c,v,M,A,D,w,P,N,F);else if(w!=0)f(y.b,y.a,y.c,M,v,A,w,D,P,N,F);else if(P!=0)f(y.c,y.a,y.b,A,v,M,P,D,w,N,F);else return!0;return!1}function S(y,v,M,A){const _=v.degenerateSegment,E=y.plane.distanceToPoint(_.start),D=y.plane.distanceToPoint(_.end);return gn(E)?gn(D)?u(y,v,M,A):(M&&(M.start.copy(_.start),M.end.copy(_.start)),y.containsPoint(_.start)):gn(D)?(M&&(M.start.copy(_.end),M.end.copy(_.end)),y.containsPoint(_.end)):y.plane.intersectLine(_,i)!=null?(M&&(M.start.copy(i),M.end.copy(i)),y.containsPoint(i)):!1}function m(y,v,M){const A=v.a;return gn(y.plane.distanceToPoint(A))&&y.containsPoint(A)?(M&&(M.start.copy(A),M.end.copy(A)),!0):!1}function p(y,v,M){const A=y.degenerateSegment,_=v.a;return A.closestPointToPoint(_,!0,i),_.distanceToSquared(i)<Xu?(M&&(M.start.copy(_),M.end.copy(_)),!0):!1}function x(y,v,M,A){if(y.isDegenerateIntoSegment)if(v.isDegenerateIntoSegment){const _=y.degenerateSegment,E=v.degenerateSegment,D=s,w=r;_.delta(D),E.delta(w);const P=i.subVectors(E.start,_.start),N=D.x*w.y-D.y*w.x;if(gn(N))return!1;const F=(P.x*w.y-P.y*w.x)/N,C=-(D.x*P.y-D.y*P.x)/N;if(F<0||F>1||C<0||C>1)return!1;const B=_.start.z+D.z*F,W=E.start.z+w.z*C;return gn(B-W)?(M&&(M.start.copy(_.start).addScaledVector(D,F),M.end.copy(_.start).addScaledVector(D,F)),!0):!1}else return v.isDegenerateIntoPoint?p(y,v,M):S(v,y,M,A);else{if(y.isDegenerateIntoPoint)return v.isDegenerateIntoPoint?v.a.distanceToSquared(y.a)<Xu?(M&&(M.start.copy(y.a),M.end.copy(y.a)),!0):!1:v.isDegenerateIntoSegment?p(v,y,M):m(v,y,M);if(v.isDegenerateIntoPoint)return m(y,v,M);if(v.isDegenerateIntoSegment)return S(y,v,M,A)}}return function(v,M=null,A=!1){this.needsUpdate&&this.update(),v.isExtendedTriangle?v.needsUpdate&&v.update():(n.copy(v),n.update(),v=n);const _=x(this,v,M,A);if(_!==void 0)return _;const E=this.plane,D=v.plane;let w=D.distanceToPoint(this.a),P=D.distanceToPoint(this.b),N=D.distanceToPoint(this.c);gn(w)&&(w=0),gn(P)&&(P=0),gn(N)&&(N=0);const F=w*P,C=w*N;if(F>0&&C>0)return!1;let B=E.distanceToPoint(v.a),W=E.distanceToPoint(v.b),k=E.distanceToPoint(v.c);gn(B)&&(B=0),gn(W)&&(W=0),gn(k)&&(k=0);const et=B*W,q=B*k;if(et>0&&q>0)return!1;s.copy(E.normal),r.copy(D.normal);const j=s.cross(r);let tt=0,St=Math.abs(j.x);const Dt=Math.abs(j.y);Dt>St&&(St=Dt,tt=1),Math.abs(j.z)>St&&(tt=2);const ht=gv[tt],vt=this.a[ht],At=this.b[ht],mt=this.c[ht],Nt=v.a[ht],he=v.b[ht],Ct=v.c[ht];if(g(this,vt,At,mt,F,C,w,P,N,h,o))return u(this,v,M,A);if(g(v,Nt,he,Ct,et,q,B,W,k,d,l))return u(this,v,M,A);if(h.y<h.x){const Yt=h.y;h.y=h.x,h.x=Yt,c.copy(o.start),o.start.copy(o.end),o.end.copy(c)}if(d.y<d.x){const Yt=d.y;d.y=d.x,d.x=Yt,c.copy(l.start),l.start.copy(l.end),l.end.copy(c)}return h.y<d.x||d.y<h.x?!1:(M&&(d.x>h.x?M.start.copy(l.start):M.start.copy(o.start),d.y<h.y?M.end.copy(l.end):M.end.copy(o.end)),!0)}})();Ln.prototype.distanceToPoint=(function(){const n=new I;return function(e){return this.closestPointToPoint(e,n),e.distanceTo(n)}})();Ln.prototype.distanceToTriangle=(function(){const n=new I,t=new I,e=["a","b","c"],i=new Vn,s=new Vn;return function(a,o=null,l=null){const c=o||l?i:null;if(this.intersectsTriangle(a,c,!0))return(o||l)&&(o&&c.getCenter(o),l&&c.getCenter(l)),0;let h=1/0;for(let d=0;d<3;d++){let u;const f=e[d],g=a[f];this.closestPointToPoint(g,n),u=g.distanceToSquared(n),u<h&&(h=u,o&&o.copy(n),l&&l.copy(g));const S=this[f];a.closestPointToPoint(S,n),u=S.distanceToSquared(n),u<h&&(h=u,o&&o.copy(S),l&&l.copy(n))}for(let d=0;d<3;d++){const u=e[d],f=e[(d+1)%3];i.set(this[u],this[f]);for(let g=0;g<3;g++){const S=e[g],m=e[(g+1)%3];s.set(a[S],a[m]),ic(i,s,n,t);const p=n.distanceToSquared(t);p<h&&(h=p,o&&o.copy(n),l&&l.copy(t))}}return Math.sqrt(h)}})();class en{constructor(t,e,i){this.isOrientedBox=!0,this.min=new I,this.max=new I,this.matrix=new $t,this.invMatrix=new $t,this.points=new Array(8).fill().map(()=>new I),this.satAxes=new Array(3).fill().map(()=>new I),this.satBounds=new Array(3).fill().map(()=>new si),this.alignedSatBounds=new Array(3).fill().map(()=>new si),this.needsUpdate=!1,t&&this.min.copy(t),e&&this.max.copy(e),i&&this.matrix.copy(i)}set(t,e,i){this.min.copy(t),this.max.copy(e),this.matrix.copy(i),this.needsUpdate=!0}copy(t){this.min.copy(t.min),this.max.copy(t.max),this.matrix.copy(t.matrix),this.needsUpdate=!0}}en.prototype.update=(function(){return function(){const t=this.matrix,e=this.min,i=this.max,s=this.points;for(let c=0;c<=1;c++)for(let h=0;h<=1;h++)for(let d=0;d<=1;d++){const u=1*c|2*h|4*d,f=s[u];f.x=c?i.x:e.x,f.y=h?i.y:e.y,f.z=d?i.z:e.z,f.applyMatrix4(t)}const r=this.satBounds,a=this.satAxes,o=s[0];for(let c=0;c<3;c++){const h=a[c],d=r[c],u=1<<c,f=s[u];h.subVectors(o,f),d.setFromPoints(h,s)}const l=this.alignedSatBounds;l[0].setFromPointsField(s,"x"),l[1].setFromPointsField(s,"y"),l[2].setFromPointsField(s,"z"),this.invMatrix.copy(this.matrix).invert(),this.needsUpdate=!1}})();en.prototype.intersectsBox=(function(){const n=new si;return function(e){this.needsUpdate&&this.update();const i=e.min,s=e.max,r=this.satBounds,a=this.satAxes,o=this.alignedSatBounds;if(n.min=i.x,n.max=s.x,o[0].isSeparated(n)||(n.min=i.y,n.max=s.y,o[1].isSeparated(n))||(n.min=i.z,n.max=s.z,o[2].isSeparated(n)))return!1;for(let l=0;l<3;l++){const c=a[l],h=r[l];if(n.setFromBox(c,e),h.isSeparated(n))return!1}return!0}})();en.prototype.intersectsTriangle=(function(){const n=new Ln,t=new Array(3),e=new si,i=new si,s=new I;return function(a){this.needsUpdate&&this.update(),a.isExtendedTriangle?a.needsUpdate&&a.update():(n.copy(a),n.update(),a=n);const o=this.satBounds,l=this.satAxes;t[0]=a.a,t[1]=a.b,t[2]=a.c;for(let u=0;u<3;u++){const f=o[u],g=l[u];if(e.setFromPoints(g,t),f.isSeparated(e))return!1}const c=a.satBounds,h=a.satAxes,d=this.points;for(let u=0;u<3;u++){const f=c[u],g=h[u];if(e.setFromPoints(g,d),f.isSeparated(e))return!1}for(let u=0;u<3;u++){const f=l[u];for(let g=0;g<4;g++){const S=h[g];if(s.crossVectors(f,S),e.setFromPoints(s,t),i.setFromPoints(s,d),e.isSeparated(i))return!1}}return!0}})();en.prototype.closestPointToPoint=(function(){return function(t,e){return this.needsUpdate&&this.update(),e.copy(t).applyMatrix4(this.invMatrix).clamp(this.min,this.max).applyMatrix4(this.matrix),e}})();en.prototype.distanceToPoint=(function(){const n=new I;return function(e){return this.closestPointToPoint(e,n),e.distanceTo(n)}})();en.prototype.distanceToBox=(function(){const n=["x","y","z"],t=new Array(12).fill().map(()=>new Vn),e=new Array(12).fill().map(()=>new Vn),i=new I,s=new I;return function(a,o=0,l=null,c=null){if(this.needsUpdate&&this.update(),this.intersectsBox(a))return(l||c)&&(a.getCenter(s),this.closestPointToPoint(s,i),a.closestPointToPoint(i,s),l&&l.copy(i),c&&c.copy(s)),0;const h=o*o,d=a.min,u=a.max,f=this.points;let g=1/0;for(let m=0;m<8;m++){const p=f[m];s.copy(p).clamp(d,u);const x=p.distanceToSquared(s);if(x<g&&(g=x,l&&l.copy(p),c&&c.copy(s),x<h))return Math.sqrt(x)}let S=0;for(let m=0;m<3;m++)for(let p=0;p<=1;p++)for(let x=0;x<=1;x++){const y=(m+1)%3,v=(m+2)%3,M=p<<y|x<<v,A=1<<m|p<<y|x<<v,_=f[M],E=f[A];t[S].set(_,E);const w=n[m],P=n[y],N=n[v],F=e[S],C=F.start,B=F.end;C[w]=d[w],C[P]=p?d[P]:u[P],C[N]=x?d[N]:u[N],B[w]=u[w],B[P]=p?d[P]:u[P],B[N]=x?d[N]:u[N],S++}for(let m=0;m<=1;m++)for(let p=0;p<=1;p++)for(let x=0;x<=1;x++){s.x=m?u.x:d.x,s.y=p?u.y:d.y,s.z=x?u.z:d.z,this.closestPointToPoint(s,i);const y=s.distanceToSquared(i);if(y<g&&(g=y,l&&l.copy(i),c&&c.copy(s),y<h))return Math.sqrt(y)}for(let m=0;m<12;m++){const p=t[m];for(let x=0;x<12;x++){const y=e[x];ic(p,y,i,s);const v=i.distanceToSquared(s);if(v<g&&(g=v,l&&l.copy(i),c&&c.copy(s),v<h))return Math.sqrt(v)}}return Math.sqrt(g)}})();class xv extends ec{constructor(){super(()=>new Ln)}}const Mn=new xv,Cs=new I,So=new I;function vv(n,t,e={},i=0,s=1/0){const r=i*i,a=s*s;let o=1/0,l=null;if(n.shapecast({boundsTraverseOrder:h=>(Cs.copy(t).clamp(h.min,h.max),Cs.distanceToSquared(t)),intersectsBounds:(h,d,u)=>u<o&&u<a,intersectsTriangle:(h,d)=>{h.closestPointToPoint(t,Cs);const u=t.distanceToSquared(Cs);return u<o&&(So.copy(Cs),o=u,l=d),u<r}}),o===1/0)return null;const c=Math.sqrt(o);return e.point?e.point.copy(So):e.point=So.clone(),e.distance=c,e.faceIndex=l,e}const Nr=parseInt(Ks)>=169,Sv=parseInt(Ks)<=161,Li=new I,Di=new I,Ni=new I,Ir=new Rt,Ur=new Rt,Fr=new Rt,qu=new I,$u=new I,Yu=new I,Ps=new I;function Mv(n,t,e,i,s,r,a,o){let l;if(r===Qe?l=n.intersectTriangle(i,e,t,!0,s):l=n.intersectTriangle(t,e,i,r!==rn,s),l===null)return null;const c=n.origin.distanceTo(s);return c<a||c>o?null:{distance:c,point:s.clone()}}function Ku(n,t,e,i,s,r,a,o,l,c,h){Li.fromBufferAttribute(t,r),Di.fromBufferAttribute(t,a),Ni.fromBufferAttribute(t,o);const d=Mv(n,Li,Di,Ni,Ps,l,c,h);if(d){if(i){Ir.fromBufferAttribute(i,r),Ur.fromBufferAttribute(i,a),Fr.fromBufferAttribute(i,o),d.uv=new Rt;const f=ze.getInterpolation(Ps,Li,Di,Ni,Ir,Ur,Fr,d.uv);Nr||(d.uv=f)}if(s){Ir.fromBufferAttribute(s,r),Ur.fromBufferAttribute(s,a),Fr.fromBufferAttribute(s,o),d.uv1=new Rt;const f=ze.getInterpolation(Ps,Li,Di,Ni,Ir,Ur,Fr,d.uv1);Nr||(d.uv1=f),Sv&&(d.uv2=d.uv1)}if(e){qu.fromBufferAttribute(e,r),$u.fromBufferAttribute(e,a),Yu.fromBufferAttribute(e,o),d.normal=new I;const f=ze.getInterpolation(Ps,Li,Di,Ni,qu,$u,Yu,d.normal);d.normal.dot(n.direction)>0&&d.normal.multiplyScalar(-1),Nr||(d.normal=f)}const u={a:r,b:a,c:o,normal:new I,materialIndex:0};if(ze.getNormal(Li,Di,Ni,u.normal),d.face=u,d.faceIndex=r,Nr){const f=new I;ze.getBarycoord(Ps,Li,Di,Ni,f),d.barycoord=f}}return d}function Zu(n){return n&&n.isMaterial?n.side:n}function Ca(n,t,e,i,s,r,a){const o=i*3;let l=o+0,c=o+1,h=o+2;const{index:d,groups:u}=n;n.index&&(l=d.getX(l),c=d.getX(c),h=d.getX(h));const{position:f,normal:g,uv:S,uv1:m}=n.attributes;if(Array.isArray(t)){const p=i*3;for(let x=0,y=u.length;x<y;x++){const{start:v,count:M,materialIndex:A}=u[x];if(p>=v&&p<v+M){const _=Zu(t[A]),E=Ku(e,f,g,S,m,l,c,h,_,r,a);if(E)if(E.faceIndex=i,E.face.materialIndex=A,s)s.push(E);else return E}}}else{const p=Zu(t),x=Ku(e,f,g,S,m,l,c,h,p,r,a);if(x)if(x.faceIndex=i,x.face.materialIndex=0,s)s.push(x);else return x}return null}function Se(n,t,e,i){const s=n.a,r=n.b,a=n.c;let o=t,l=t+1,c=t+2;e&&(o=e.getX(o),l=e.getX(l),c=e.getX(c)),s.x=i.getX(o),s.y=i.getY(o),s.z=i.getZ(o),r.x=i.getX(l),r.y=i.getY(l),r.z=i.getZ(l),a.x=i.getX(c),a.y=i.getY(c),a.z=i.getZ(c)}function yv(n,t,e,i,s,r,a,o){const{geometry:l,_indirectBuffer:c}=n;for(let h=i,d=i+s;h<d;h++)Ca(l,t,e,h,r,a,o)}function Ev(n,t,e,i,s,r,a){const{geometry:o,_indirectBuffer:l}=n;let c=1/0,h=null;for(let d=i,u=i+s;d<u;d++){let f;f=Ca(o,t,e,d,null,r,a),f&&f.distance<c&&(h=f,c=f.distance)}return h}function bv(n,t,e,i,s,r,a){const{geometry:o}=e,{index:l}=o,c=o.attributes.position;for(let h=n,d=t+n;h<d;h++){let u;if(u=h,Se(a,u*3,l,c),a.needsUpdate=!0,i(a,u,s,r))return!0}return!1}function Tv(n,t=null){t&&Array.isArray(t)&&(t=new Set(t));const e=n.geometry,i=e.index?e.index.array:null,s=e.attributes.position;let r,a,o,l,c=0;const h=n._roots;for(let u=0,f=h.length;u<f;u++)r=h[u],a=new Uint32Array(r),o=new Uint16Array(r),l=new Float32Array(r),d(0,c),c+=r.byteLength;function d(u,f,g=!1){const S=u*2;if(me(S,o)){const m=Ie(u,a),p=Ye(S,o);let x=1/0,y=1/0,v=1/0,M=-1/0,A=-1/0,_=-1/0;for(let E=3*m,D=3*(m+p);E<D;E++){let w=i[E];const P=s.getX(w),N=s.getY(w),F=s.getZ(w);P<x&&(x=P),P>M&&(M=P),N<y&&(y=N),N>A&&(A=N),F<v&&(v=F),F>_&&(_=F)}return l[u+0]!==x||l[u+1]!==y||l[u+2]!==v||l[u+3]!==M||l[u+4]!==A||l[u+5]!==_?(l[u+0]=x,l[u+1]=y,l[u+2]=v,l[u+3]=M,l[u+4]=A,l[u+5]=_,!0):!1}else{const m=Te(u),p=we(u,a);let x=g,y=!1,v=!1;if(t){if(!x){const w=m/ve+f/un,P=p/ve+f/un;y=t.has(w),v=t.has(P),x=!y&&!v}}else y=!0,v=!0;const M=x||y,A=x||v;let _=!1;M&&(_=d(m,f,x));let E=!1;A&&(E=d(p,f,x));const D=_||E;if(D)for(let w=0;w<3;w++){const P=m+w,N=p+w,F=l[P],C=l[P+3],B=l[N],W=l[N+3];l[u+w]=F<B?F:B,l[u+w+3]=C>W?C:W}return D}}}function yn(n,t,e,i,s){let r,a,o,l,c,h;const d=1/e.direction.x,u=1/e.direction.y,f=1/e.direction.z,g=e.origin.x,S=e.origin.y,m=e.origin.z;let p=t[n],x=t[n+3],y=t[n+1],v=t[n+3+1],M=t[n+2],A=t[n+3+2];return d>=0?(r=(p-g)*d,a=(x-g)*d):(r=(x-g)*d,a=(p-g)*d),u>=0?(o=(y-S)*u,l=(v-S)*u):(o=(v-S)*u,l=(y-S)*u),r>l||o>a||((o>r||isNaN(r))&&(r=o),(l<a||isNaN(a))&&(a=l),f>=0?(c=(M-m)*f,h=(A-m)*f):(c=(A-m)*f,h=(M-m)*f),r>h||c>a)?!1:((c>r||r!==r)&&(r=c),(h<a||a!==a)&&(a=h),r<=s&&a>=i)}function wv(n,t,e,i,s,r,a,o){const{geometry:l,_indirectBuffer:c}=n;for(let h=i,d=i+s;h<d;h++){let u=c?c[h]:h;Ca(l,t,e,u,r,a,o)}}function Av(n,t,e,i,s,r,a){const{geometry:o,_indirectBuffer:l}=n;let c=1/0,h=null;for(let d=i,u=i+s;d<u;d++){let f;f=Ca(o,t,e,l?l[d]:d,null,r,a),f&&f.distance<c&&(h=f,c=f.distance)}return h}function Rv(n,t,e,i,s,r,a){const{geometry:o}=e,{index:l}=o,c=o.attributes.position;for(let h=n,d=t+n;h<d;h++){let u;if(u=e.resolveTriangleIndex(h),Se(a,u*3,l,c),a.needsUpdate=!0,i(a,u,s,r))return!0}return!1}function Cv(n,t,e,i,s,r,a){ee.setBuffer(n._roots[t]),yn(0,ee.float32Array,i,r,a)&&El(0,n,e,i,s,r,a),ee.clearBuffer()}function El(n,t,e,i,s,r,a){const{float32Array:o,uint16Array:l,uint32Array:c}=ee,h=n*2;if(me(h,l)){const u=Ie(n,c),f=Ye(h,l);yv(t,e,i,u,f,s,r,a)}else{const u=Te(n);yn(u,o,i,r,a)&&El(u,t,e,i,s,r,a);const f=we(n,c);yn(f,o,i,r,a)&&El(f,t,e,i,s,r,a)}}const Pv=["x","y","z"];function Lv(n,t,e,i,s,r){ee.setBuffer(n._roots[t]);let a=null;return yn(0,ee.float32Array,i,s,r)&&(a=bl(0,n,e,i,s,r)),ee.clearBuffer(),a}function bl(n,t,e,i,s,r){const{float32Array:a,uint16Array:o,uint32Array:l}=ee;let c=n*2;if(me(c,o)){const d=Ie(n,l),u=Ye(c,o);return Ev(t,e,i,d,u,s,r)}else{const d=jl(n,l),u=Pv[d],g=i.direction[u]>=0;let S,m;g?(S=Te(n),m=we(n,l)):(S=we(n,l),m=Te(n));const x=yn(S,a,i,s,r)?bl(S,t,e,i,s,r):null;if(x){const M=x.point[u];if(g?M<=a[m+d]:M>=a[m+d+3])return x}const v=yn(m,a,i,s,r)?bl(m,t,e,i,s,r):null;return x&&v?x.distance<=v.distance?x:v:x||v||null}}const Or=new tn,rs=new Ln,as=new Ln,Ls=new $t,Ju=new en,Br=new en;function Dv(n,t,e,i){ee.setBuffer(n._roots[t]);const s=Tl(0,n,e,i);return ee.clearBuffer(),s}function Tl(n,t,e,i,s=null){const{float32Array:r,uint16Array:a,uint32Array:o}=ee;let l=n*2;if(s===null&&(e.boundingBox||e.computeBoundingBox(),Ju.set(e.boundingBox.min,e.boundingBox.max,i),s=Ju),me(l,a)){const h=t.geometry,d=h.index,u=h.attributes.position,f=e.index,g=e.attributes.position,S=Ie(n,o),m=Ye(l,a);if(Ls.copy(i).invert(),e.boundsTree)return de(n,r,Br),Br.matrix.copy(Ls),Br.needsUpdate=!0,e.boundsTree.shapecast({intersectsBounds:x=>Br.intersectsBox(x),intersectsTriangle:x=>{x.a.applyMatrix4(i),x.b.applyMatrix4(i),x.c.applyMatrix4(i),x.needsUpdate=!0;for(let y=S*3,v=(m+S)*3;y<v;y+=3)if(Se(as,y,d,u),as.needsUpdate=!0,x.intersectsTriangle(as))return!0;return!1}});{const p=Ra(e);for(let x=S*3,y=(m+S)*3;x<y;x+=3){Se(rs,x,d,u),rs.a.applyMatrix4(Ls),rs.b.applyMatrix4(Ls),rs.c.applyMatrix4(Ls),rs.needsUpdate=!0;for(let v=0,M=p*3;v<M;v+=3)if(Se(as,v,f,g),as.needsUpdate=!0,rs.intersectsTriangle(as))return!0}}}else{const h=Te(n),d=we(n,o);return de(h,r,Or),!!(s.intersectsBox(Or)&&Tl(h,t,e,i,s)||(de(d,r,Or),s.intersectsBox(Or)&&Tl(d,t,e,i,s)))}}const zr=new $t,Mo=new en,Ds=new en,Nv=new I,Iv=new I,Uv=new I,Fv=new I;function Ov(n,t,e,i={},s={},r=0,a=1/0){t.boundingBox||t.computeBoundingBox(),Mo.set(t.boundingBox.min,t.boundingBox.max,e),Mo.needsUpdate=!0;const o=n.geometry,l=o.attributes.position,c=o.index,h=t.attributes.position,d=t.index,u=Mn.getPrimitive(),f=Mn.getPrimitive();let g=Nv,S=Iv,m=null,p=null;s&&(m=Uv,p=Fv);let x=1/0,y=null,v=null;return zr.copy(e).invert(),Ds.matrix.copy(zr),n.shapecast({boundsTraverseOrder:M=>Mo.distanceToBox(M),intersectsBounds:(M,A,_)=>_<x&&_<a?(A&&(Ds.min.copy(M.min),Ds.max.copy(M.max),Ds.needsUpdate=!0),!0):!1,intersectsRange:(M,A)=>{if(t.boundsTree)return t.boundsTree.shapecast({boundsTraverseOrder:E=>Ds.distanceToBox(E),intersectsBounds:(E,D,w)=>w<x&&w<a,intersectsRange:(E,D)=>{for(let w=E,P=E+D;w<P;w++){Se(f,3*w,d,h),f.a.applyMatrix4(e),f.b.applyMatrix4(e),f.c.applyMatrix4(e),f.needsUpdate=!0;for(let N=M,F=M+A;N<F;N++){Se(u,3*N,c,l),u.needsUpdate=!0;const C=u.distanceToTriangle(f,g,m);if(C<x&&(S.copy(g),p&&p.copy(m),x=C,y=N,v=w),C<r)return!0}}}});{const _=Ra(t);for(let E=0,D=_;E<D;E++){Se(f,3*E,d,h),f.a.applyMatrix4(e),f.b.applyMatrix4(e),f.c.applyMatrix4(e),f.needsUpdate=!0;for(let w=M,P=M+A;w<P;w++){Se(u,3*w,c,l),u.needsUpdate=!0;const N=u.distanceToTriangle(f,g,m);if(N<x&&(S.copy(g),p&&p.copy(m),x=N,y=w,v=E),N<r)return!0}}}}}),Mn.releasePrimitive(u),Mn.releasePrimitive(f),x===1/0?null:(i.point?i.point.copy(S):i.point=S.clone(),i.distance=x,i.faceIndex=y,s&&(s.point?s.point.copy(p):s.point=p.clone(),s.point.applyMatrix4(zr),S.applyMatrix4(zr),s.distance=S.sub(s.point).length(),s.faceIndex=v),i)}function Bv(n,t=null){t&&Array.isArray(t)&&(t=new Set(t));const e=n.geometry,i=e.index?e.index.array:null,s=e.attributes.position;let r,a,o,l,c=0;const h=n._roots;for(let u=0,f=h.length;u<f;u++)r=h[u],a=new Uint32Array(r),o=new Uint16Array(r),l=new Float32Array(r),d(0,c),c+=r.byteLength;function d(u,f,g=!1){const S=u*2;if(me(S,o)){const m=Ie(u,a),p=Ye(S,o);let x=1/0,y=1/0,v=1/0,M=-1/0,A=-1/0,_=-1/0;for(let E=m,D=m+p;E<D;E++){const w=3*n.resolveTriangleIndex(E);for(let P=0;P<3;P++){let N=w+P;N=i?i[N]:N;const F=s.getX(N),C=s.getY(N),B=s.getZ(N);F<x&&(x=F),F>M&&(M=F),C<y&&(y=C),C>A&&(A=C),B<v&&(v=B),B>_&&(_=B)}}return l[u+0]!==x||l[u+1]!==y||l[u+2]!==v||l[u+3]!==M||l[u+4]!==A||l[u+5]!==_?(l[u+0]=x,l[u+1]=y,l[u+2]=v,l[u+3]=M,l[u+4]=A,l[u+5]=_,!0):!1}else{const m=Te(u),p=we(u,a);let x=g,y=!1,v=!1;if(t){if(!x){const w=m/ve+f/un,P=p/ve+f/un;y=t.has(w),v=t.has(P),x=!y&&!v}}else y=!0,v=!0;const M=x||y,A=x||v;let _=!1;M&&(_=d(m,f,x));let E=!1;A&&(E=d(p,f,x));const D=_||E;if(D)for(let w=0;w<3;w++){const P=m+w,N=p+w,F=l[P],C=l[P+3],B=l[N],W=l[N+3];l[u+w]=F<B?F:B,l[u+w+3]=C>W?C:W}return D}}}function zv(n,t,e,i,s,r,a){ee.setBuffer(n._roots[t]),yn(0,ee.float32Array,i,r,a)&&wl(0,n,e,i,s,r,a),ee.clearBuffer()}function wl(n,t,e,i,s,r,a){const{float32Array:o,uint16Array:l,uint32Array:c}=ee,h=n*2;if(me(h,l)){const u=Ie(n,c),f=Ye(h,l);wv(t,e,i,u,f,s,r,a)}else{const u=Te(n);yn(u,o,i,r,a)&&wl(u,t,e,i,s,r,a);const f=we(n,c);yn(f,o,i,r,a)&&wl(f,t,e,i,s,r,a)}}const kv=["x","y","z"];function Hv(n,t,e,i,s,r){ee.setBuffer(n._roots[t]);let a=null;return yn(0,ee.float32Array,i,s,r)&&(a=Al(0,n,e,i,s,r)),ee.clearBuffer(),a}function Al(n,t,e,i,s,r){const{float32Array:a,uint16Array:o,uint32Array:l}=ee;let c=n*2;if(me(c,o)){const d=Ie(n,l),u=Ye(c,o);return Av(t,e,i,d,u,s,r)}else{const d=jl(n,l),u=kv[d],g=i.direction[u]>=0;let S,m;g?(S=Te(n),m=we(n,l)):(S=we(n,l),m=Te(n));const x=yn(S,a,i,s,r)?Al(S,t,e,i,s,r):null;if(x){const M=x.point[u];if(g?M<=a[m+d]:M>=a[m+d+3])return x}const v=yn(m,a,i,s,r)?Al(m,t,e,i,s,r):null;return x&&v?x.distance<=v.distance?x:v:x||v||null}}const kr=new tn,os=new Ln,ls=new Ln,Ns=new $t,Qu=new en,Hr=new en;function Gv(n,t,e,i){ee.setBuffer(n._roots[t]);const s=Rl(0,n,e,i);return ee.clearBuffer(),s}function Rl(n,t,e,i,s=null){const{float32Array:r,uint16Array:a,uint32Array:o}=ee;let l=n*2;if(s===null&&(e.boundingBox||e.computeBoundingBox(),Qu.set(e.boundingBox.min,e.boundingBox.max,i),s=Qu),me(l,a)){const h=t.geometry,d=h.index,u=h.attributes.position,f=e.index,g=e.attributes.position,S=Ie(n,o),m=Ye(l,a);if(Ns.copy(i).invert(),e.boundsTree)return de(n,r,Hr),Hr.matrix.copy(Ns),Hr.needsUpdate=!0,e.boundsTree.shapecast({intersectsBounds:x=>Hr.intersectsBox(x),intersectsTriangle:x=>{x.a.applyMatrix4(i),x.b.applyMatrix4(i),x.c.applyMatrix4(i),x.needsUpdate=!0;for(let y=S,v=m+S;y<v;y++)if(Se(ls,3*t.resolveTriangleIndex(y),d,u),ls.needsUpdate=!0,x.intersectsTriangle(ls))return!0;return!1}});{const p=Ra(e);for(let x=S,y=m+S;x<y;x++){const v=t.resolveTriangleIndex(x);Se(os,3*v,d,u),os.a.applyMatrix4(Ns),os.b.applyMatrix4(Ns),os.c.applyMatrix4(Ns),os.needsUpdate=!0;for(let M=0,A=p*3;M<A;M+=3)if(Se(ls,M,f,g),ls.needsUpdate=!0,os.intersectsTriangle(ls))return!0}}}else{const h=Te(n),d=we(n,o);return de(h,r,kr),!!(s.intersectsBox(kr)&&Rl(h,t,e,i,s)||(de(d,r,kr),s.intersectsBox(kr)&&Rl(d,t,e,i,s)))}}const Gr=new $t,yo=new en,Is=new en,Vv=new I,Wv=new I,Xv=new I,qv=new I;function $v(n,t,e,i={},s={},r=0,a=1/0){t.boundingBox||t.computeBoundingBox(),yo.set(t.boundingBox.min,t.boundingBox.max,e),yo.needsUpdate=!0;const o=n.geometry,l=o.attributes.position,c=o.index,h=t.attributes.position,d=t.index,u=Mn.getPrimitive(),f=Mn.getPrimitive();let g=Vv,S=Wv,m=null,p=null;s&&(m=Xv,p=qv);let x=1/0,y=null,v=null;return Gr.copy(e).invert(),Is.matrix.copy(Gr),n.shapecast({boundsTraverseOrder:M=>yo.distanceToBox(M),intersectsBounds:(M,A,_)=>_<x&&_<a?(A&&(Is.min.copy(M.min),Is.max.copy(M.max),Is.needsUpdate=!0),!0):!1,intersectsRange:(M,A)=>{if(t.boundsTree){const _=t.boundsTree;return _.shapecast({boundsTraverseOrder:E=>Is.distanceToBox(E),intersectsBounds:(E,D,w)=>w<x&&w<a,intersectsRange:(E,D)=>{for(let w=E,P=E+D;w<P;w++){const N=_.resolveTriangleIndex(w);Se(f,3*N,d,h),f.a.applyMatrix4(e),f.b.applyMatrix4(e),f.c.applyMatrix4(e),f.needsUpdate=!0;for(let F=M,C=M+A;F<C;F++){const B=n.resolveTriangleIndex(F);Se(u,3*B,c,l),u.needsUpdate=!0;const W=u.distanceToTriangle(f,g,m);if(W<x&&(S.copy(g),p&&p.copy(m),x=W,y=F,v=w),W<r)return!0}}}})}else{const _=Ra(t);for(let E=0,D=_;E<D;E++){Se(f,3*E,d,h),f.a.applyMatrix4(e),f.b.applyMatrix4(e),f.c.applyMatrix4(e),f.needsUpdate=!0;for(let w=M,P=M+A;w<P;w++){const N=n.resolveTriangleIndex(w);Se(u,3*N,c,l),u.needsUpdate=!0;const F=u.distanceToTriangle(f,g,m);if(F<x&&(S.copy(g),p&&p.copy(m),x=F,y=w,v=E),F<r)return!0}}}}}),Mn.releasePrimitive(u),Mn.releasePrimitive(f),x===1/0?null:(i.point?i.point.copy(S):i.point=S.clone(),i.distance=x,i.faceIndex=y,s&&(s.point?s.point.copy(p):s.point=p.clone(),s.point.applyMatrix4(Gr),S.applyMatrix4(Gr),s.distance=S.sub(s.point).length(),s.faceIndex=v),i)}function ju(n,t,e){return n===null?null:(n.point.applyMatrix4(t.matrixWorld),n.distance=n.point.distanceTo(e.ray.origin),n.object=t,n)}const Vr=new en,Wr=new Js,th=new I,eh=new $t,nh=new I,Eo=["getX","getY","getZ"];class Ys extends pv{static serialize(t,e={}){e={cloneBuffers:!0,...e};const i=t.geometry,s=t._roots,r=t._indirectBuffer,a=i.getIndex(),o={version:1,roots:null,index:null,indirectBuffer:null};return e.cloneBuffers?(o.roots=s.map(l=>l.slice()),o.index=a?a.array.slice():null,o.indirectBuffer=r?r.slice():null):(o.roots=s,o.index=a?a.array:null,o.indirectBuffer=r),o}static deserialize(t,e,i={}){i={setIndex:!0,indirect:!!t.indirectBuffer,...i};const{index:s,roots:r,indirectBuffer:a}=t;t.version||(console.warn("MeshBVH.deserialize: Serialization format has been changed and will be fixed up. It is recommended to regenerate any stored serialized data."),l(r));const o=new Ys(e,{...i,[Ql]:!0});if(o._roots=r,o._indirectBuffer=a||null,i.setIndex){const c=e.getIndex();if(c===null){const h=new Ue(t.index,1,!1);e.setIndex(h)}else c.array!==s&&(c.array.set(s),c.needsUpdate=!0)}return o;function l(c){for(let h=0;h<c.length;h++){const d=c[h],u=new Uint32Array(d),f=new Uint16Array(d);for(let g=0,S=d.byteLength/un;g<S;g++){const m=ve*g,p=2*m;me(p,f)||(u[m+6]=u[m+6]/ve-g)}}}}get primitiveStride(){return 3}get resolveTriangleIndex(){return this.resolvePrimitiveIndex}constructor(t,e={}){e.maxLeafTris&&(console.warn('MeshBVH: "maxLeafTris" option has been deprecated. Use "targetLeafSize", instead.'),e={...e,targetLeafSize:e.maxLeafTris}),super(t,e)}shiftTriangleOffsets(t){return super.shiftPrimitiveOffsets(t)}writePrimitiveBounds(t,e,i){const s=this.geometry,r=this._indirectBuffer,a=s.attributes.position,o=s.index?s.index.array:null,c=(r?r[t]:t)*3;let h=c+0,d=c+1,u=c+2;o&&(h=o[h],d=o[d],u=o[u]);for(let f=0;f<3;f++){const g=a[Eo[f]](h),S=a[Eo[f]](d),m=a[Eo[f]](u);let p=g;S<p&&(p=S),m<p&&(p=m);let x=g;S>x&&(x=S),m>x&&(x=m),e[i+f]=p,e[i+f+3]=x}return e}computePrimitiveBounds(t,e,i){const s=this.geometry,r=this._indirectBuffer,a=s.attributes.position,o=s.index?s.index.array:null,l=a.normalized;if(t<0||e+t-i.offset>i.length/6)throw new Error("MeshBVH: compute triangle bounds range is invalid.");const c=a.array,h=a.offset||0;let d=3;a.isInterleavedBufferAttribute&&(d=a.data.stride);const u=["getX","getY","getZ"],f=i.offset;for(let g=t,S=t+e;g<S;g++){const p=(r?r[g]:g)*3,x=(g-f)*6;let y=p+0,v=p+1,M=p+2;o&&(y=o[y],v=o[v],M=o[M]),l||(y=y*d+h,v=v*d+h,M=M*d+h);for(let A=0;A<3;A++){let _,E,D;l?(_=a[u[A]](y),E=a[u[A]](v),D=a[u[A]](M)):(_=c[y+A],E=c[v+A],D=c[M+A]);let w=_;E<w&&(w=E),D<w&&(w=D);let P=_;E>P&&(P=E),D>P&&(P=D);const N=(P-w)/2,F=A*2;i[x+F+0]=w+N,i[x+F+1]=N+(Math.abs(w)+N)*oa}}return i}raycastObject3D(t,e,i=[]){const{material:s}=t;if(s===void 0)return;eh.copy(t.matrixWorld).invert(),Wr.copy(e.ray).applyMatrix4(eh),nh.setFromMatrixScale(t.matrixWorld),th.copy(Wr.direction).multiply(nh);const r=th.length(),a=e.near/r,o=e.far/r;if(e.firstHitOnly===!0){let l=this.raycastFirst(Wr,s,a,o);l=ju(l,t,e),l&&i.push(l)}else{const l=this.raycast(Wr,s,a,o);for(let c=0,h=l.length;c<h;c++){const d=ju(l[c],t,e);d&&i.push(d)}}return i}refit(t=null){return(this.indirect?Bv:Tv)(this,t)}raycast(t,e=ni,i=0,s=1/0){const r=this._roots,a=[],o=this.indirect?zv:Cv;for(let l=0,c=r.length;l<c;l++)o(this,l,e,t,a,i,s);return a}raycastFirst(t,e=ni,i=0,s=1/0){const r=this._roots;let a=null;const o=this.indirect?Hv:Lv;for(let l=0,c=r.length;l<c;l++){const h=o(this,l,e,t,i,s);h!=null&&(a==null||h.distance<a.distance)&&(a=h)}return a}intersectsGeometry(t,e){let i=!1;const s=this._roots,r=this.indirect?Gv:Dv;for(let a=0,o=s.length;a<o&&(i=r(this,a,t,e),!i);a++);return i}shapecast(t){const e=Mn.getPrimitive(),i=super.shapecast({...t,intersectsPrimitive:t.intersectsTriangle,scratchPrimitive:e,iterate:this.indirect?Rv:bv});return Mn.releasePrimitive(e),i}bvhcast(t,e,i){let{intersectsRanges:s,intersectsTriangles:r}=i;const a=Mn.getPrimitive(),o=this.geometry.index,l=this.geometry.attributes.position,c=this.indirect?g=>{const S=this.resolveTriangleIndex(g);Se(a,S*3,o,l)}:g=>{Se(a,g*3,o,l)},h=Mn.getPrimitive(),d=t.geometry.index,u=t.geometry.attributes.position,f=t.indirect?g=>{const S=t.resolveTriangleIndex(g);Se(h,S*3,d,u)}:g=>{Se(h,g*3,d,u)};if(r){if(!(t instanceof Ys))throw new Error('MeshBVH: "intersectsTriangles" callback can only be used with another MeshBVH.');const g=(S,m,p,x,y,v,M,A)=>{for(let _=p,E=p+x;_<E;_++){f(_),h.a.applyMatrix4(e),h.b.applyMatrix4(e),h.c.applyMatrix4(e),h.needsUpdate=!0;for(let D=S,w=S+m;D<w;D++)if(c(D),a.needsUpdate=!0,r(a,h,D,_,y,v,M,A))return!0}return!1};if(s){const S=s;s=function(m,p,x,y,v,M,A,_){return S(m,p,x,y,v,M,A,_)?!0:g(m,p,x,y,v,M,A,_)}}else s=g}return super.bvhcast(t,e,{intersectsRanges:s})}intersectsBox(t,e){return Vr.set(t.min,t.max,e),Vr.needsUpdate=!0,this.shapecast({intersectsBounds:i=>Vr.intersectsBox(i),intersectsTriangle:i=>Vr.intersectsTriangle(i)})}intersectsSphere(t){return this.shapecast({intersectsBounds:e=>t.intersectsBox(e),intersectsTriangle:e=>e.intersectsSphere(t)})}closestPointToGeometry(t,e,i={},s={},r=0,a=1/0){return(this.indirect?$v:Ov)(this,t,e,i,s,r,a)}closestPointToPoint(t,e={},i=0,s=1/0){return vv(this,t,e,i,s)}}const Yv={f32:Float32Array,u32:Uint32Array,i32:Int32Array,u16:Uint16Array,i16:Int16Array,i8:Int8Array,u8:Uint8Array};async function us(n,t){const e=await fetch(`/api/surface/${n}`,{signal:t});if(!e.ok)throw new Error(`surface ${n}: ${e.status}`);const i=await e.arrayBuffer(),s=new DataView(i).getUint32(0,!0),r=JSON.parse(new TextDecoder().decode(new Uint8Array(i,4,s))),a={};for(const[o,l]of Object.entries(r.arrays))a[o]=new Yv[l.type](i,4+s+l.offset,l.count*l.width);return{...r,arrays:a,bytes:i.byteLength}}const Kv=.1,Zv=-32768;async function ih(n,t){const e=await us(`${n}-compact`,t),{position:i,index:s,deviation:r}=e.arrays;if(i&&e.step&&(e.arrays.position=Float32Array.from(i,a=>a*e.step)),s){let a=0;e.arrays.index=Uint32Array.from(s,o=>a+=o)}return r&&(e.arrays.deviation=Float32Array.from(r,a=>a===Zv?NaN:a*Kv)),e}function bo(n){const t=new hn,{position:e,normal:i,index:s}=n.arrays;if(!e||!s)throw new Error("a surface without vertices");if(t.setAttribute("position",new Ue(e,3)),i){const a=new _p(i,4);t.setAttribute("normal",new ql(a,3,0,!0))}t.setIndex(new Ue(s,1));const r=e.length/3;for(const a of["deviation","known","site"]){const o=a==="deviation"?new Float32Array(r):new Uint8Array(r);t.setAttribute(a,new Ue(o,1))}return t.computeBoundingSphere(),t}function sh(n,t,e){const i=new Float32Array(t.length),s=new Uint8Array(t.length);for(let r=0;r<t.length;r++){const a=t[r];a===a&&(i[r]=a,s[r]=1)}n.setAttribute("deviation",new Ue(i,1)),n.setAttribute("known",new Ue(s,1)),n.setAttribute("site",new Ue(e,1))}const Jv=`# Colour map CET-D1A (diverging, blue - white - red, 8 bits a channel), 256 rows of red green blue.
# (c) Peter Kovesi, as distributed in colorcet 3.2; licence: CC-BY-4.0 (Creative Commons Attribution 4.0).
# P. Kovesi, Good Colour Maps: How to Design Them, arXiv:1509.03700, 2015. Unchanged but for the file format.
23 41 113
23 42 116
24 43 119
24 44 122
24 45 125
25 46 128
25 47 131
25 48 134
26 49 137
26 50 140
26 52 143
27 53 146
27 54 149
27 55 152
28 56 155
28 57 158
28 58 161
29 60 164
29 61 167
29 62 170
30 63 173
30 64 176
30 65 179
31 67 182
31 68 185
32 69 188
33 70 191
33 71 194
34 73 197
36 74 199
37 75 202
38 76 204
40 78 207
42 79 209
44 80 211
46 82 213
49 83 215
51 84 217
54 86 218
57 87 220
59 89 221
62 90 223
65 91 224
68 93 225
71 94 226
73 96 227
76 97 228
79 99 229
81 100 230
84 102 231
87 103 231
89 105 232
92 106 233
94 108 234
96 109 235
99 111 236
101 113 237
104 114 237
106 116 238
108 117 239
110 119 240
112 120 241
115 122 242
117 123 242
119 125 243
121 127 244
123 128 245
125 130 245
127 131 246
130 133 247
132 135 248
134 136 248
136 138 249
138 139 249
140 141 250
142 143 250
144 144 251
146 146 251
148 148 252
150 149 252
153 151 252
155 153 252
157 155 252
159 156 252
161 158 252
163 160 252
165 162 252
167 163 252
169 165 252
171 167 251
173 169 251
175 171 251
177 172 251
179 174 251
181 176 250
183 178 250
185 180 250
186 181 250
188 183 249
190 185 249
192 187 249
194 189 249
196 190 248
197 192 248
199 194 248
201 196 247
203 198 247
204 200 247
206 201 247
208 203 246
210 205 246
211 207 246
213 209 245
215 211 245
216 212 245
218 214 244
220 216 244
221 217 243
223 219 243
225 220 242
226 222 241
228 223 240
230 224 239
231 225 238
233 226 237
234 226 236
236 226 234
237 226 232
238 226 230
240 226 228
241 225 226
242 224 224
243 223 222
244 222 219
245 220 217
245 218 214
246 217 211
247 215 208
248 213 206
248 211 203
249 209 200
249 206 197
249 204 194
250 202 191
250 200 189
251 197 186
251 195 183
251 193 180
251 190 177
252 188 174
252 186 172
252 183 169
252 181 166
252 179 163
252 176 160
252 174 157
252 172 155
252 169 152
252 167 149
252 165 146
252 162 144
252 160 141
252 157 138
252 155 135
252 153 133
252 150 130
251 148 127
251 145 125
251 143 122
251 141 119
250 138 117
250 136 114
249 133 111
249 131 109
248 129 106
248 126 104
247 124 102
247 122 99
246 119 97
245 117 95
244 115 92
243 113 90
242 110 88
241 108 86
240 106 84
239 104 82
238 102 80
237 100 78
236 97 76
235 95 74
233 93 72
232 91 70
231 89 68
230 86 66
228 84 64
227 82 62
226 80 60
225 78 58
223 75 56
222 73 54
221 71 53
220 68 51
218 66 49
217 63 47
216 61 45
214 58 43
213 56 41
212 53 39
210 51 38
209 48 36
208 45 34
206 42 32
205 39 30
203 36 29
201 33 27
200 30 25
198 27 24
196 24 22
195 21 21
193 18 20
191 15 18
189 12 17
186 9 16
184 6 15
182 4 14
180 3 14
177 1 13
175 1 12
172 0 12
170 0 11
167 0 11
164 0 11
162 0 10
159 0 10
156 1 10
154 1 10
151 1 9
148 2 9
146 2 9
143 3 9
140 3 8
138 4 8
135 4 8
132 4 7
130 5 7
127 5 6
124 5 6
122 5 6
119 6 5
117 6 5
114 6 4
112 6 4
109 6 3
107 6 3
104 7 2
102 7 2
`,ks=Jv.split(`
`).filter(n=>/^\d/.test(n)).map(n=>n.trim().split(/\s+/).map(Number));function Qv(){const n=new Uint8Array(ks.length*4);ks.forEach((e,i)=>n.set([...e,255],4*i));const t=new sd(n,ks.length,1);return t.magFilter=$e,t.minFilter=$e,t.needsUpdate=!0,t}function jv(n){const t=n.getContext("2d");t&&(n.width=ks.length,n.height=1,ks.forEach(([e,i,s],r)=>{t.fillStyle=`rgb(${e} ${i} ${s})`,t.fillRect(r,0,1,1)}))}function rh(n,t,e,i,s){const r=t.clone(),a=e.clone();if(i){const f=i.clone().invert();r.applyMatrix4(f),a.applyMatrix4(f)}const o=[],l=new Vn,c=new I;n.shapecast({intersectsBounds:f=>r.intersectsBox(f)&&a.intersectsBox(f),intersectsTriangle:f=>{const g=[];for(const[S,m]of[[f.a,f.b],[f.b,f.c],[f.c,f.a]])l.set(S,m),g.length<6&&r.intersectLine(l,c)&&g.push(c.x,c.y,c.z);return g.length===6&&o.push(...g),!1}});const h=new hn;h.setAttribute("position",new Fe(o,3)),i&&h.applyMatrix4(i),h.translate(t.normal.x*.02,t.normal.y*.02,t.normal.z*.02);const d=new rd({color:new Xt().setHex(s,jn)}),u=new Ep(h,d);return u.frustumCulled=!1,u}const tS=`
  attribute float deviation;
  attribute float known;
  attribute float site;
  varying float vDeviation;
  varying float vKnown;
  varying float vChosen;
  varying vec3 vNormal;
  varying vec3 vPlace;
  uniform float chosen;
  void main() {
    vDeviation = deviation;
    vKnown = known;
    vChosen = (chosen < 0.5 || abs(site - chosen) < 0.5) ? 1.0 : 0.0;
    vNormal = normalMatrix * normal;
    vPlace = position;
    gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
  }`,eS=`
  precision highp float;
  varying float vDeviation;
  varying float vKnown;
  varying float vChosen;
  varying vec3 vNormal;
  varying vec3 vPlace;
  uniform sampler2D palette;
  uniform float range;
  uniform float coloured;
  uniform vec3 plaster;
  uniform vec3 inside;
  uniform vec4 cut;
  uniform float posts;
  void main() {
    if (dot(cut.xyz, vPlace) > cut.w || (posts < 0.5 && vKnown > 0.5)) discard;
    vec3 n = normalize(vNormal);
    bool front = gl_FrontFacing;
    float light = 0.56 + 0.34 * abs(n.z) + 0.12 * n.y;
    vec3 base = front ? plaster : inside;
    if (front && coloured > 0.5 && vKnown > 0.98) {
      float t = clamp(0.5 + 0.5 * vDeviation / range, 0.002, 0.998);
      vec3 c = texture2D(palette, vec2(t, 0.5)).rgb;
      base = mix(mix(plaster, c, 0.55), c, vChosen);
      light = 0.78 + 0.22 * abs(n.z);
    }
    gl_FragColor = vec4(base * light, 1.0);
  }`,nS=`
  varying vec3 vNormal;
  varying vec3 vPlace;
  uniform float inset;
  void main() {
    vec3 place = position - normal * inset;
    vNormal = normalMatrix * normal;
    vPlace = (modelMatrix * vec4(place, 1.0)).xyz;
    gl_Position = projectionMatrix * modelViewMatrix * vec4(place, 1.0);
  }`,iS=`
  precision highp float;
  varying vec3 vNormal;
  varying vec3 vPlace;
  uniform vec3 ink;
  uniform vec3 paper;
  uniform vec4 cut;
  void main() {
    if (dot(cut.xyz, vPlace) > cut.w) discard;
    float stripe = step(0.5, fract((gl_FragCoord.x + gl_FragCoord.y) / 9.0));
    float light = 0.75 + 0.25 * abs(normalize(vNormal).z);
    gl_FragColor = vec4(mix(paper, ink, stripe) * light, 1.0);
  }`,sS=45,rS=2,aS=220,oS=10,ah=34,To=76,lS=.09,Xr={radius:.25,length:22},oh=new fe(0,0,0,1),qr={light:{back:15331050,plaster:13483944,inside:9405556,line:1056798},dark:{back:791314,plaster:10721151,inside:5064508,line:16777215}};function fi(n){return new I((n>>16)/255,(n>>8&255)/255,(n&255)/255)}class cS{constructor(t,e,i,s){this.canvas=t,this.onPins=e,this.onReady=i,this.onShare=s,this.renderer=new Ix({canvas:t,antialias:!0,preserveDrawingBuffer:!1}),this.renderer.localClippingEnabled=!0,this.renderer.outputColorSpace=jn;const r={palette:{value:Qv()},range:{value:50},coloured:{value:1},chosen:{value:0},plaster:{value:fi(qr.light.plaster)},inside:{value:fi(qr.light.inside)},cut:{value:oh.clone()},posts:{value:1}};this.material=new ii({uniforms:r,vertexShader:tS,fragmentShader:eS,side:rn}),this.bodyMaterial=new ii({uniforms:{ink:{value:fi(0)},paper:{value:fi(0)},cut:r.cut,inset:{value:lS}},vertexShader:nS,fragmentShader:iS,side:rn});const a=new Ip(16777215,1.6);this.camera.add(a),this.scene.add(this.camera,new Up(16777215,1.4),this.bodies,this.parts,this.lines,this.marker),this.marker.visible=!1,this.controls=new Fx(this.camera,t),this.controls.enableDamping=!1,this.controls.addEventListener("start",()=>this.stir()),this.controls.addEventListener("change",()=>this.stir()),new ResizeObserver(()=>this.resize()).observe(t.parentElement??t),this.theme(!1),this.resize()}renderer;scene=new dp;camera=new Cn(28,1,1,2e3);controls;material;bodyMaterial;fine=null;coarse=null;bodies=new Ii;parts=new Ii;partMaterial=new Cp({side:rn,flatShading:!0});channelMaterial=new gl;marker=new Sn(new Kl(1,24,16),new gl({color:16756768,transparent:!0,opacity:.6,depthTest:!1}));partKeys="";built={sites:[],surfaces:{}};lines=new Ii;lineColours={scan:1056798,body:13715724};tree=null;origin=new I;stands=[];chosen=null;look={range:50,coloured:!0,unseen:!0,parts:!0,posts:!0,cutTurn:null};geometryKey="";paintKey="";wantedPaint="";reduced=!1;bodyKeys="";pending=0;moving=!1;slow=!1;frames=[];lastFrame=0;restTimer=0;flight=null;abort=null;still=matchMedia("(prefers-reduced-motion: reduce)");stats={firstPictureMs:0,fullMs:0,frameMs:0,bytes:0,treeMs:0,pickMs:0,triangles:0};weak(){const t=this.renderer.getContext(),e=t.getExtension("WEBGL_debug_renderer_info"),i=String(t.getParameter(e?e.UNMASKED_RENDERER_WEBGL:t.RENDERER)),{deviceMemory:s=8,connection:r}=navigator;return/swiftshader|llvmpipe|software|basic render/i.test(i)||s<=rS||r?.saveData===!0}theme(t){const e=t?qr.dark:qr.light;this.renderer.setClearColor(new Xt().setHex(e.back,jn)),this.material.uniforms.plaster.value=fi(e.plaster),this.material.uniforms.inside.value=fi(e.inside),this.bodyMaterial.uniforms.ink.value=fi(t?10467506:5071968),this.bodyMaterial.uniforms.paper.value=fi(t?2371630:16054261),this.lineColours={scan:e.line,body:t?16752988:12730636},this.partMaterial.color.setHex(t?8366537:5998248,jn),this.channelMaterial.color.setHex(t?16752988:11680266,jn),this.recut(),this.draw()}async show(t,e,i,s,r){this.stands=i,this.wantedPaint=e,r!==this.reduced&&(this.geometryKey=""),this.reduced=r;const a=performance.now();if(t!==this.geometryKey){this.abort?.abort(),this.abort=new AbortController;const l=this.abort.signal;if(this.geometryKey=t,this.paintKey="",this.bodyKeys="",this.clear(),this.onReady(!1),!t)return this.draw();const c=await(r?ih(t,l):us(`${t}-coarse`,l));this.origin.fromArray(c.origin),this.coarse=this.mesh(bo(c)),this.overview(!0),this.draw(),this.stats.firstPictureMs=performance.now()-a;const h=r?c:await us(t,l);this.fine=r?this.coarse:this.mesh(bo(h)),this.stats.bytes=r?c.bytes:c.bytes+h.bytes,this.stats.triangles=h.arrays.index.length/3,this.onShare(r?c.triangles/c.of:1),this.coarse.visible=this.coarse===this.fine,this.draw(),this.stats.fullMs=performance.now()-a,this.onReady(!0),this.plant(this.fine.geometry)}const o=this.wantedPaint;if(o&&o!==this.paintKey&&this.fine&&this.coarse){const l=await(r?ih:us)(o,this.abort?.signal);if(t!==this.geometryKey||o!==this.wantedPaint)return;this.paintKey=o,sh(this.fine.geometry,l.arrays.deviation,l.arrays.site),r||sh(this.coarse.geometry,l.arrays.coarse_deviation,l.arrays.coarse_site),this.stats.bytes+=l.bytes,this.overview(!0)}await this.standBodies(s),await this.standParts(),this.draw()}async standBodies(t){const e=JSON.stringify([t,this.stands]);if(e===this.bodyKeys)return;this.bodyKeys=e,this.bodies.clear();const i=new Map;for(const[s,r]of Object.entries(t)){const o=bo(await us(r,this.abort?.signal)).toNonIndexed();o.computeVertexNormals(),i.set(s,o)}if(e===this.bodyKeys){for(const s of this.stands){const r=i.get(s.body);if(!r)continue;const a=new Sn(r,this.bodyMaterial);a.matrixAutoUpdate=!1,a.matrix.copy(this.pose(s)),a.name=s.site,this.bodies.add(a)}this.bodies.visible=this.look.unseen&&this.look.posts,this.recut()}}async place(t,e){this.built={sites:t,surfaces:e},await this.standParts()}async standParts(){const{sites:t,surfaces:e}=this.built,i=JSON.stringify([t.map(({chain:r,origin:a,direction:o})=>[r,a,o]),this.origin.toArray()]);if(!this.coarse||i===this.partKeys)return;this.partKeys=i;const s=new Map;for(const[r,a]of Object.entries(e)){const o=await us(a),l=new hn;l.setAttribute("position",new Ue(o.arrays.position,3)),l.setIndex(new Ue(o.arrays.index,1)),s.set(r,l)}if(i===this.partKeys){this.parts.clear();for(const r of t.filter(a=>a.chain.length>0)){for(const a of r.chain){const o=new Sn(s.get(a.part),this.partMaterial);o.matrixAutoUpdate=!1,o.matrix.copy(this.pose({site:r.site,body:a.part,pose:a.scan_from_part})),this.parts.add(o)}this.parts.add(this.channel(r))}this.parts.visible=this.look.parts,this.draw()}}channel(t){const e=new I().fromArray(t.direction),i=new Sn(new Yl(Xr.radius,Xr.radius,Xr.length,12),this.channelMaterial);return i.quaternion.setFromUnitVectors(new I(0,1,0),e),i.position.fromArray(t.origin).sub(this.origin).addScaledVector(e,Xr.length/2),i}mesh(t){const e=new Sn(t,this.material);return e.frustumCulled=!1,this.scene.add(e),e}clear(){for(const t of[this.fine,this.coarse])t&&(this.scene.remove(t),t.geometry.dispose());this.fine=this.coarse=this.tree=null,this.bodies.clear(),this.parts.clear(),this.partKeys="",this.marker.visible=!1,this.lines.clear()}plant(t){(window.requestIdleCallback??(i=>window.setTimeout(i,50)))(()=>{if(this.fine?.geometry!==t)return;const i=performance.now();this.tree=new Ys(t,{indirect:!0,targetLeafSize:12}),this.stats.treeMs=performance.now()-i,this.recut(),this.draw()})}set(t){const e=t.cutTurn!==this.look.cutTurn;if(this.look=t,this.material.uniforms.range.value=t.range,this.material.uniforms.coloured.value=t.coloured?1:0,this.material.uniforms.posts.value=t.posts?1:0,this.bodies.visible=t.unseen&&t.posts,this.parts.visible=t.parts,e){this.recut();const i=this.stands.find(s=>s.site===this.chosen);i&&this.goTo(i)}this.draw()}choose(t){if(this.marker.visible=!1,t===this.chosen)return this.draw();this.chosen=t;const e=this.stands.findIndex(i=>i.site===t);this.material.uniforms.chosen.value=e+1,this.recut(),e>=0?this.goTo(this.stands[e]):this.overview(!1)}recut(){this.lines.clear();const t=this.material.uniforms.cut.value,e=this.stands.find(c=>c.site===this.chosen);if(this.look.cutTurn===null||!e){t.copy(oh),this.partMaterial.clippingPlanes=null;return}const i=this.pose(e),s=new I().setFromMatrixPosition(i),r=this.sideways(i,this.look.cutTurn);t.set(r.x,r.y,r.z,r.dot(s)+.002);const a=new vn().setFromNormalAndCoplanarPoint(r,s);this.partMaterial.clippingPlanes=[a.clone().negate()];const o=new Zs(s,16);this.tree&&this.lines.add(rh(this.tree,a,o,null,this.lineColours.scan));const l=this.bodies.children.find(c=>c.name===e.site);if(l){const c=new Ys(l.geometry);this.lines.add(rh(c,a,o,i,this.lineColours.body))}}sideways(t,e){const i=new I().setFromMatrixColumn(t,0),s=new I().setFromMatrixColumn(t,1);return i.multiplyScalar(Math.cos(e)).addScaledVector(s,Math.sin(e)).normalize()}pose(t){const e=new $t;e.set(...t.pose);const i=new I().setFromMatrixPosition(e).sub(this.origin);return e.setPosition(i)}up(){const t=new I;for(const e of this.stands)t.add(new I().setFromMatrixColumn(this.pose(e),2));return t.length()>.1?t.normalize():this.facing()}facing(){const t=this.coarse?.geometry.getAttribute("normal"),e=new I,i=new I;for(let s=0;s<(t?.count??0);s++)e.add(i.fromBufferAttribute(t,s));return e.length()>.1?e.normalize():new I(0,0,1)}lookAt(t){const e=new I().fromArray(t).sub(this.origin),i=this.up(),s=e.clone().sub(this.centre());s.addScaledVector(i,-s.dot(i)).normalize().multiplyScalar(.85).addScaledVector(i,.53),this.marker.position.copy(e),this.marker.visible=!0,this.fly(e,s.normalize(),1.5*ah,i,!1)}centre(){const t=(this.fine??this.coarse)?.geometry.boundingSphere;return t?t.center.clone():new I}outward(t){const e=this.pose(t),i=new I().setFromMatrixColumn(e,2),s=new I().setFromMatrixPosition(e).sub(this.centre());return s.addScaledVector(i,-s.dot(i)),s.length()<2&&s.copy(new I().setFromMatrixColumn(e,0)),s.normalize()}overview(t){if(this.chosen&&t){const h=this.stands.find(d=>d.site===this.chosen);if(h)return this.goTo(h)}const i=(this.fine??this.coarse)?.geometry.boundingSphere;if(!i)return;const s=this.up(),r=new I;for(const h of this.stands)r.add(this.outward(h));r.length()<.1&&r.set(0,-1,0),r.addScaledVector(s,-r.dot(s)).normalize();const a=s.clone().multiplyScalar(.86).addScaledVector(r,.5).normalize(),o=Math.max(this.canvas.clientHeight,2*To),l=Math.min((o-To)/o,this.camera.aspect),c=Math.tan(this.camera.fov*Math.PI/360)*l;this.fly(i.center.clone(),a,1.04*i.radius/c,s,t)}goTo(t){const e=this.pose(t),i=new I().setFromMatrixColumn(e,2),s=new I().setFromMatrixPosition(e).addScaledVector(i,4),r=this.look.cutTurn,o=(r===null?this.outward(t):this.sideways(e,r)).multiplyScalar(r===null?.85:1).addScaledVector(i,r===null?.53:.12);this.fly(s,o.normalize(),ah,this.up(),!1)}fly(t,e,i,s,r){const a={target:this.controls.target.clone(),place:this.camera.position.clone()},o=t.clone().addScaledVector(e,i);this.camera.up.copy(s),this.flight!==null&&cancelAnimationFrame(this.flight);const l=performance.now(),c=h=>{const d=r||this.still.matches?1:Math.min(1,Math.max(0,h-l)/380),u=1-(1-d)**3;this.controls.target.lerpVectors(a.target,t,u),this.camera.position.lerpVectors(a.place,o,u),this.controls.update(),this.stir(),this.flight=d<1?requestAnimationFrame(c):null};r||this.still.matches?c(l):this.flight=requestAnimationFrame(c)}nudge(t,e,i){const s=this.camera.position.clone().sub(this.controls.target),r=new I().crossVectors(this.camera.up,s).normalize();s.applyAxisAngle(this.camera.up.clone().normalize(),t);const a=s.clone().applyAxisAngle(r,e);Math.abs(a.angleTo(this.camera.up)-Math.PI/2)<1.5&&s.copy(a),s.multiplyScalar(1-i),this.camera.position.copy(this.controls.target).add(s),this.controls.update(),this.stir()}pick(t,e){if(!this.tree)return null;const i=performance.now(),s=this.canvas.getBoundingClientRect(),r=new Rt((t-s.left)/s.width*2-1,1-(e-s.top)/s.height*2),a=new Op;a.setFromCamera(r,this.camera);const o=this.tree.raycastFirst(a.ray,rn);if(this.stats.pickMs=performance.now()-i,!o)return null;const l=o.point.add(this.origin);return[l.x,l.y,l.z]}stir(){this.moving=!0,window.clearTimeout(this.restTimer),this.restTimer=window.setTimeout(()=>{this.moving=!1,this.frames=[],this.draw()},aS),this.draw()}draw(){this.pending||(this.pending=requestAnimationFrame(t=>{this.pending=0,this.moving&&this.lastFrame&&this.clock(t-this.lastFrame),this.lastFrame=this.moving?t:0,this.render()}))}clock(t){this.frames.push(t),!(this.frames.length<3)&&(this.frames=this.frames.slice(-8),this.stats.frameMs=[...this.frames].sort((e,i)=>e-i)[this.frames.length>>1],this.stats.frameMs>sS&&(this.slow=!0))}render(){if(this.fine&&this.coarse&&this.fine!==this.coarse){const t=this.moving&&this.slow;this.coarse.visible=t,this.fine.visible=!t}this.renderer.render(this.scene,this.camera),this.onPins(this.pins())}pins(){const{clientWidth:t,clientHeight:e}=this.canvas;return this.stands.map(i=>{const s=this.pose(i),r=new I().setFromMatrixColumn(s,2),a=new I().setFromMatrixPosition(s).addScaledVector(r,oS).project(this.camera),o=(a.x+1)/2*t,l=(1-a.y)/2*e;return{site:i.site,x:o,y:l,shown:a.z<1&&o>0&&l>0&&o<t&&l<e}})}resize(){const t=this.canvas.parentElement;if(!t)return;const{clientWidth:e,clientHeight:i}=t;!e||!i||(this.renderer.setPixelRatio(Math.min(devicePixelRatio,2)),this.renderer.setSize(e,i,!1),this.camera.aspect=e/i,this.camera.setViewOffset(e,i,0,To/2,e,i),this.camera.updateProjectionMatrix(),this.draw())}}const lh="picture";function uS(n){const{state:t,chosen:e,look:i,dark:s,pointing:r,choose:a,pointed:o}=n,l=cn(null),c=cn(null),[h,d]=se([]),[u,f]=se(!0),[g,S]=se(!1),[m,p]=se(null),[x,y]=se(1);Ne(()=>{try{c.current=new cS(l.current,d,f,y);const w=localStorage.getItem(lh);p(w?w==="reduced":c.current.weak()),n.hold(c.current),window.arch=c.current}catch{S(!0)}},[]);const{result:v,scene:M}=t;Ne(()=>{if(m===null)return;const w=M&&v&&(M.paint||!M.whole)?v.sites.map(P=>({site:P.site,body:P.scan_body,pose:P.scan_from_connection})):[];c.current?.show(M?.geometry??"",M?.paint??"",w,M?.bodies??{},m).catch(P=>{P instanceof DOMException||console.error(P)})},[M,v,m]);const A=w=>{localStorage.setItem(lh,w?"reduced":"full"),p(w)},{placement:_}=t;Ne(()=>{c.current?.place(_?.sites??[],_?.surfaces??{}).catch(w=>{w instanceof DOMException||console.error(w)})},[_,M]),Ne(()=>c.current?.choose(e),[e]),Ne(()=>c.current?.set(i),[i]),Ne(()=>c.current?.theme(s),[s]);const E=cn([0,0]),D=new Map(v?.sites.map(w=>[w.site,w.verdict]));return b("section",{class:`picture ${r?"pointing":""}`,"aria-label":st.picture,children:[b("canvas",{ref:l,tabIndex:0,role:"img","aria-label":st.picture,onPointerDown:w=>{E.current=[w.clientX,w.clientY]},onClick:w=>{const[P,N]=E.current;r&&Math.hypot(w.clientX-P,w.clientY-N)<5&&o(c.current?.pick(w.clientX,w.clientY)??null)}}),M&&h.map(w=>w.shown&&b("button",{type:"button",class:`pin ${w.site===e?"chosen":""}`,style:{transform:`translate(${w.x}px, ${w.y}px)`},"aria-label":st.actions.show(w.site),"aria-pressed":w.site===e,onClick:()=>a(w.site===e?null:w.site),children:b(Fl,{verdict:D.get(w.site)??null,size:34,text:w.site})},w.site)),g&&b("p",{class:"overlay",children:st.noGl}),!g&&!u&&M&&b("p",{class:"overlay",role:"status",children:st.loading}),v&&!M&&!t.job&&b("p",{class:"overlay",children:st.noSurface}),r&&b("div",{class:"cross","aria-hidden":"true"}),M&&x<1&&b("p",{class:"reduced",children:st.reduced(x)}),M&&b(hS,{...n,reduced:m===!0,reduce:A})]})}const Ui=[10,20,30,50,75,100,150,200,300,500];function ch(n,t){const e=Ui.reduce((i,s,r)=>Math.abs(s-n)<Math.abs(Ui[i]-n)?r:i,0);return Ui[Math.min(Ui.length-1,Math.max(0,e+t))]}function hS({state:n,chosen:t,look:e,setLook:i,choose:s,reduced:r,reduce:a}){const o=cn(null),l=st.actions,c=!!n.scene?.paint&&n.result!==null;Ne(()=>{o.current&&jv(o.current)},[c]);const h=Object.keys(n.scene?.bodies??{}).length>0;return b(Me,{children:[t&&b("div",{class:"tools top",children:[b("button",{type:"button",onClick:()=>s(null),children:l.whole}),b("button",{type:"button","aria-pressed":e.cutTurn!==null,onClick:()=>i({...e,cutTurn:e.cutTurn===null?0:null}),children:l.section}),e.cutTurn!==null&&b("input",{type:"range",min:"0",max:"360",step:"5","aria-label":l.sectionTurn,value:Math.round(e.cutTurn*180/Math.PI),onInput:d=>i({...e,cutTurn:Number(d.currentTarget.value)*Math.PI/180})})]}),c&&b("div",{class:"tools bottom",children:[b("div",{class:"legend",children:[b("canvas",{ref:o,"aria-hidden":"true"}),b("div",{class:"ticks",children:[b("span",{children:["−",e.range,b("small",{children:l.inside})]}),b("span",{children:"0"}),b("span",{children:["+",e.range," µm",b("small",{children:l.outside})]})]})]}),b("label",{class:"range",children:[b("span",{class:"visually-hidden",children:l.range}),b("input",{type:"range",min:"0",max:Ui.length-1,step:"1",value:Ui.indexOf(e.range),"aria-valuetext":l.rangeValue(e.range),onInput:d=>i({...e,range:Ui[Number(d.currentTarget.value)]})})]}),b("label",{class:"tick",children:[b("input",{type:"checkbox",checked:e.coloured,onChange:()=>i({...e,coloured:!e.coloured})})," ",l.colours]}),(n.placement?.sites.length??0)>0&&b("label",{class:"tick",children:[b("input",{type:"checkbox",checked:e.parts,onChange:()=>i({...e,parts:!e.parts})})," ",st.build.shown]}),(n.placement?.sites.length??0)>0&&b("label",{class:"tick",children:[b("input",{type:"checkbox",checked:e.posts,onChange:()=>i({...e,posts:!e.posts})})," ",l.posts]}),h&&b("label",{class:"tick",children:[b("input",{type:"checkbox",checked:e.unseen,onChange:()=>i({...e,unseen:!e.unseen})})," ",l.unseen]}),b("label",{class:"tick",children:[b("input",{type:"checkbox",checked:r,onChange:()=>a(!r)})," ",l.reduced]})]})]})}const $r=Math.PI/24,wo=.12,dS={ArrowLeft:[-$r,0,0],ArrowRight:[$r,0,0],ArrowUp:[0,-$r,0],ArrowDown:[0,$r,0],"+":[0,0,wo],"=":[0,0,wo],"-":[0,0,-wo]};function fS(n){Ne(()=>{const t=e=>{if(e.ctrlKey||e.metaKey||e.altKey||n.keys)return;const i=e.target,s=dS[e.key];if(i.tagName==="CANVAS"&&s)return e.preventDefault(),n.arch.current?.nudge(...s);i.matches("select, textarea, input[type=text]")&&e.key!=="Escape"||e.key==="Enter"&&i.tagName!=="CANVAS"&&i!==document.body||pS(e,n)&&e.preventDefault()};return window.addEventListener("keydown",t),()=>window.removeEventListener("keydown",t)})}function pS(n,t){const{names:e,chosen:i,choose:s,look:r,setLook:a}=t,o=i===null?-1:e.indexOf(i),l=d=>s(e[(d+e.length)%e.length]??null),c={0:()=>s(null),n:()=>l(o+1),p:()=>l(o<0?e.length-1:o-1),"[":()=>a({...r,range:ch(r.range,-1)}),"]":()=>a({...r,range:ch(r.range,1)}),s:()=>{i&&a({...r,cutTurn:r.cutTurn===null?0:null})},h:()=>a({...r,unseen:!r.unseen}),d:()=>document.querySelector("[data-choose]")?.click(),u:()=>void qe("undo"),U:()=>void qe("redo"),"?":()=>t.setKeys(!0),Escape:()=>{t.pointing?t.setPointing(!1):s(null)}};if(/^[1-9]$/.test(n.key)&&e[Number(n.key)-1])return l(Number(n.key)-1),!0;if(n.key==="Enter"&&t.pointing)return t.pointed(mS(t.arch.current)),!0;const h=c[n.key]??(n.shiftKey?void 0:c[n.key.toLowerCase()]);return h?.(),h!==void 0}function mS(n){const t=document.querySelector("canvas")?.getBoundingClientRect();return t&&n?n.pick(t.left+t.width/2,t.top+t.height/2):null}const Cl=".stl,.ply,.obj,.gz";function _S(n){const{state:t,pointing:e,note:i}=n,s=st.open,{job:r,refusal:a}=t;return b("div",{class:"open-list",children:[a&&b("div",{class:"refusal",role:"alert",children:[b("p",{children:a.text}),b("div",{class:"row",children:[n.again&&a.about==="scan"&&b("button",{type:"button",onClick:n.again,children:s.again}),b("button",{type:"button",class:"quiet",onClick:n.dismiss,children:s.dismiss})]})]}),t.notice&&b("div",{class:"notice",role:"status",children:[b("p",{children:t.notice}),b("button",{type:"button",class:"quiet small",onClick:n.dismiss,children:s.dismiss})]}),r&&b("div",{class:"job",role:"status",children:[!t.result&&b("h1",{class:"visually-hidden",children:st.measuring}),b("p",{children:[b("strong",{children:r.file}),b("span",{children:st.stage(r.stage,r.share)})]}),b("progress",{max:"1",value:r.share>0?r.share:void 0,"aria-label":st.stage(r.stage,r.share)}),!t.read_only&&b("button",{type:"button",class:"quiet",onClick:n.stop,children:s.stop})]}),e&&b("p",{class:"asking",role:"status",children:i||s.pointNow})]})}function gS({state:n,file:t,point:e,measure:i,pointing:s}){const r=st.open;return n.parts?n.result?b("div",{class:"again",children:[!n.case&&b(uh,{state:n,measure:i}),b(la,{button:r.replace,accept:Cl,onFile:a=>t("scan",a)}),b("button",{type:"button",class:"quiet","aria-pressed":s,onClick:e,children:r.missed})]}):b(Me,{children:[b(la,{big:!0,title:r.noScan,more:r.noScanMore,button:r.choose,accept:Cl,onFile:a=>t("scan",a)}),n.case?n.scene&&b("button",{type:"button",class:"quiet",onClick:()=>void i(n.work),children:r.measureThis}):b(uh,{state:n,measure:i})]}):b(la,{big:!0,title:r.noParts,more:r.noPartsMore,button:r.chooseParts,accept:".zip",onFile:a=>t("parts",a)})}const xS=["tissue","opposing","bite"];function vS({state:n,file:t,settled:e}){const i=st.around,s=n.case?.around;if(!s||!n.result)return null;const r=n.job!==null,a=s.some(o=>!o.joined&&!o.as_it_lies);return b("section",{class:"block around",children:[b("h2",{children:i.title}),b("ul",{class:"plain",children:xS.map(o=>{const l=s.find(c=>c.role===o);return b("li",{children:[b("p",{children:[b("strong",{children:i.role[o]})," ",b("span",{children:l?i.state(l):i.what[o]})]}),!r&&b(la,{small:!0,button:l?i.other:i.choose,label:i.chooseFor(o),accept:Cl,onFile:c=>t(o,c)})]})})}),a&&b("button",{type:"button",disabled:r,onClick:()=>void qe("join").then(e),children:i.join})]})}function uh({state:n,measure:t}){const[e,i]=Ah(n.work,n);return b("fieldset",{class:"work",children:[b("legend",{children:st.workLabel}),Object.keys(st.work).map(s=>b("label",{children:[b("input",{type:"radio",name:"work",checked:e===s,onChange:()=>i(s,t(s))}),b("span",{children:st.work[s]})]}))]})}function la({big:n,small:t,label:e,title:i,more:s,button:r,accept:a,onFile:o}){const l=cn(null);return b("div",{class:n?"chooser big":"chooser",children:[i&&b("h1",{class:"chooser-title",children:i}),s&&b("p",{children:s}),b("button",{type:"button",class:n?"primary":t?"quiet small":"quiet","aria-label":e,"data-choose":t?void 0:"",onClick:()=>l.current?.click(),children:r}),b("input",{ref:l,type:"file",accept:a,hidden:!0,"aria-label":e??r,onChange:c=>{const h=c.currentTarget.files?.[0];h&&o(h),c.currentTarget.value=""}})]})}function SS({state:n}){const t=n.result?.together;return t?b("div",{class:`together is-${t.verdict.replaceAll(" ","-")}`,children:[b(Fl,{verdict:t.verdict,size:28}),b("p",{children:[b("span",{class:"eyebrow",children:st.together}),b("strong",{children:[st.verdict[t.verdict],t.because?":":""]})," ",t.because]})]}):null}const MS=12,yS=1e6;function ES({site:n,result:t,state:e,open:i,choose:s,drop:r,part:a,settled:o}){const{lead:l,because:c,remedy:h}=st.reason(n),d=e.case?.sites.find(f=>f.site===n.site),u=cn(null);return Ne(()=>{i&&u.current&&bS(u.current)},[i]),b("li",{class:`site ${i?"open":""} is-${(n.verdict??"none").replaceAll(" ","-")}`,children:[b("h2",{children:b("button",{ref:u,type:"button",class:"site-head","aria-expanded":i,onClick:()=>s(i?null:n.site),children:[b(Fl,{verdict:n.verdict,size:36,text:n.site}),b("span",{class:"sentence",children:[b("span",{class:"visually-hidden",children:[st.site(n.site),": "]}),b("strong",{children:[l,c?":":""]})," ",c,c&&".",h&&b("span",{class:"remedy",children:[b("b",{children:st.doThis})," ",h]}),n.verdict==="use"&&n.findings.length>0&&b("span",{class:"remedy",children:st.seen(n.findings)}),b("span",{class:"figures",children:b(TS,{site:n})}),e.case&&b("span",{class:"still",children:[d&&b("b",{children:d.tooth})," ",cf(d)]})]})]})}),i&&b(wS,{site:n,result:t,state:e,drop:r,part:a,settled:o})]})}function bS(n){const t=n.closest(".side");if(!t||t.scrollHeight<=t.clientHeight)return n.scrollIntoView({block:"nearest"});t.scrollTop+=n.getBoundingClientRect().top-t.getBoundingClientRect().top-MS}function TS({site:n}){const t=n.u95_total??n.u95;if(!t)return null;const e=st.bounds,i=t.index_deg===null?"":`, ${e.index} ${t.any_turn?e.anyTurn:`± ${Ht(t.index_deg,2)}°`}`;return b(Me,{children:[b("span",{children:n.scan_body}),b("span",{title:n.u95_total?e.total:e.of,children:[e.platform," ± ",Ht(t.platform_um,0)," ",e.um,", ",e.axis," ± ",Ht(t.axis_deg,2),"°",i]})]})}function wS({site:n,result:t,state:e,drop:i,part:s,settled:r}){const a=st.evidence,o=n.deviation,l=n.alternatives.filter(c=>c.odds<yS).sort((c,h)=>c.odds-h.odds).slice(0,4);return b("div",{class:"evidence",children:[n.findings.length>0&&b("section",{children:[b("h3",{children:a.findings}),b("ul",{class:"findings",children:n.findings.map(c=>b("li",{children:[b("strong",{children:[Yd(c),"."]})," ",c.advice]}))})]}),e.case&&b(uf,{site:n,state:e,settled:r}),b(Kd,{site:n,state:e,settled:r}),o&&b("section",{children:[b("h3",{children:a.deviation}),b("dl",{class:"numbers",children:[b("div",{children:[b("dt",{children:a.rms}),b("dd",{children:[Ht(o.rms_um,1)," ",b("i",{children:"µm"})]})]}),b("div",{children:[b("dt",{children:a.mean}),b("dd",{children:[Ht(o.mean_um,1)," ",b("i",{children:"µm"})]})]}),b("div",{children:[b("dt",{children:a.p95}),b("dd",{children:["± ",Ht(o.p95_um,0)," ",b("i",{children:"µm"})]})]}),n.coverage!==null&&b("div",{children:[b("dt",{children:a.coverage}),b("dd",{children:[Ht(100*n.coverage,0)," ",b("i",{children:"%"})]})]})]})]}),b("section",{children:[b("h3",{children:a.budget}),b(AS,{site:n})]}),b(CS,{site:n,result:t}),n.alternatives.length>0&&b("section",{children:[b("h3",{children:a.alternatives}),b("ul",{class:"plain",children:[l.length===0&&b("li",{children:a.noAlternatives}),l.map(c=>b("li",{children:[c.scan_body,a.turned(c.turn_deg),": ",a.odds(c.odds)]}))]})]}),!e.read_only&&e.parts&&b("section",{class:"by-hand",children:[b("label",{children:[st.actions.part,b("select",{value:n.scan_body,disabled:e.job!==null,onChange:c=>s(n.site,c.currentTarget.value),children:e.parts.bodies.map(c=>b("option",{value:c.id,children:st.siteOn(c.id,c.seats_on)}))})]}),b("button",{type:"button",class:"quiet",disabled:e.job!==null,onClick:()=>i(n.site),children:st.actions.drop})]})]})}function AS({site:n}){const t=st.evidence,e=st.bounds,i=n.u95_total,s=b("dl",{class:"numbers",children:[n.u95&&b("div",{children:[b("dt",{children:e.of}),b("dd",{children:["± ",Ht(n.u95.platform_um,0)," ",b("i",{children:"µm"})," · ± ",Ht(n.u95.axis_deg,2),b("i",{children:"°"})]})]}),i&&b("div",{children:[b("dt",{children:e.total}),b("dd",{children:["± ",Ht(i.platform_um,0)," ",b("i",{children:"µm"})," · ± ",Ht(i.axis_deg,2),b("i",{children:"°"})]})]})]});if(n.budget.length===0)return b(Me,{children:[s,b("p",{class:"note",children:t.noBudget})]});const r=Math.max(...n.budget.map(a=>a.platform_um??0),1e-9);return b(Me,{children:[b("p",{class:"note",children:t.budgetNote}),b("table",{class:"budget",children:b("tbody",{children:n.budget.map(a=>b(RS,{row:a,greatest:r}))})}),s]})}function RS({row:n,greatest:t}){const e=n.platform_um!==null;return b("tr",{class:e?"":"unknown",children:[b("th",{scope:"row",children:[n.source,n.origin&&b("small",{children:n.origin})]}),b("td",{class:"bar",children:b("span",{style:{width:e?`${100*n.platform_um/t}%`:"100%"}})}),b("td",{class:"value",children:e?Ht(n.platform_um,1):n.index_deg===null?st.evidence.noFigure:st.evidence.turnOnly(n.index_deg)})]})}function CS({site:n,result:t}){const e=t.pairs.filter(i=>i.sites.includes(n.site));return e.length===0?null:b("section",{children:[b("h3",{children:st.evidence.distances}),b("table",{class:"pairs",children:b("tbody",{children:e.map(i=>b("tr",{children:[b("th",{scope:"row",children:st.site(i.sites[0]===n.site?i.sites[1]:i.sites[0])}),b("td",{children:[Ht(i.distance_mm,3)," ",b("i",{children:"mm"})]}),b("td",{children:["± ",Ht(i.u95_um,0)," ",b("i",{children:"µm"})]}),b("td",{children:[Ht(i.angle_deg,2),b("i",{children:"°"})]})]}))})})]})}function PS(){const[n,t]=se(localStorage.getItem("theme")??"auto"),e=matchMedia("(prefers-color-scheme: dark)"),[i,s]=se(e.matches);Ne(()=>{const a=()=>s(e.matches);return e.addEventListener("change",a),()=>e.removeEventListener("change",a)},[]);const r=n==="dark"||n==="auto"&&i;return Ne(()=>{document.documentElement.dataset.theme=r?"dark":"light",localStorage.setItem("theme",n)},[r,n]),[n,r,t]}function LS(){const[n,t]=se(null),[e,i]=se("waiting");return Ne(()=>$d(t,i),[]),Ne(()=>{const s=n?.case?.code??n?.result?.scan_file;document.title=s?`${s} · ${st.title}`:st.title},[n?.case?.code,n?.result?.scan_file]),n?b(DS,{state:n,link:e}):b("main",{class:"waiting",children:b("p",{role:"status",children:e==="lost"?st.lost:st.connecting})})}function DS({state:n,link:t}){const[e,i,s]=PS(),[r,a]=se(null),[o,l]=se({range:50,coloured:!0,unseen:!0,parts:!0,posts:!0,cutTurn:null}),[c,h]=se(!1),[d,u]=se(""),[f,g]=se(!1),[S,m]=se(!1),[p,x]=se(null),y=cn(null),{result:v}=n,M=v?.sites.map(C=>C.site)??[];Ne(()=>{a(C=>C!==null&&!M.includes(C)?null:C),h(!1)},[v?.run]);const A=Vd(C=>{a(C),C===null&&l(B=>({...B,cutTurn:null}))},[]),_=C=>{C.refusal&&u(C.refusal.text)},E=(C,B)=>{C==="scan"&&x(B),Ac(C,B).then(_)},D=C=>E(C.name.toLowerCase().endsWith(".zip")?"parts":"scan",C),w=C=>{if(!C)return u(st.open.pointMiss);h(!1),u(""),qe("site/add",{point:C}).then(_)},P=()=>{u(""),h(!c)};fS({arch:y,names:M,chosen:r,choose:A,look:o,setLook:l,pointing:c,setPointing:h,pointed:w,keys:S,setKeys:m,canPoint:!n.read_only});const F={file:E,point:P,stop:()=>void qe("stop"),dismiss:()=>void qe("dismiss"),measure:C=>{const B=qe("measure",{work:C});return B.then(_),B},again:p?()=>void Ac("scan",p,!0).then(_):null};return b("div",{class:"page",onDragOver:C=>{C.preventDefault(),g(!n.read_only)},onDragLeave:C=>{C.relatedTarget===null&&g(!1)},onDrop:C=>{C.preventDefault(),g(!1);const B=C.dataTransfer?.files[0];B&&!n.read_only&&D(B)},children:[b("a",{class:"skip",href:"#sites",children:st.skip}),b(OS,{state:n,theme:e,setTheme:s,setKeys:m}),t==="lost"&&b("div",{class:"lost",role:"alert",children:[b("p",{children:st.lost}),b("p",{children:st.lostHow(n.folder)})]}),b("main",{children:[b(uS,{state:n,chosen:r,look:o,dark:i,pointing:c,setLook:l,choose:A,pointed:w,hold:C=>{y.current=C}}),b("div",{class:"side",id:"sites",tabIndex:-1,children:[b(_S,{...F,state:n,pointing:c,note:d}),v&&b(NS,{state:n,chosen:r,choose:A,settled:_}),!n.read_only&&n.job===null&&b(gS,{...F,state:n,pointing:c,note:d}),v&&b(IS,{state:n,settled:_,file:E,look:C=>{a(null),y.current?.lookAt(C)}}),b("p",{class:"caution",children:st.caution})]})]}),f&&b("div",{class:"dropping",children:b("p",{children:st.open.dropNow})}),S&&b(BS,{close:()=>m(!1)})]})}function NS({state:n,chosen:t,choose:e,settled:i}){const s=n.result;return b(Me,{children:[b("header",{class:"headline",children:[b("h1",{children:st.headline(s.sites,s.together?.verdict??null)}),b("p",{children:[!n.case&&b(Me,{children:[s.scan_file," · "]}),st.triangles(s.triangles)," · ",s.parts_name,s.work&&b(Me,{children:[" · ",st.work[s.work]??s.work]})]}),n.scene&&!n.scene.whole&&b("p",{class:"note",children:st.partial}),s.sites.length===0&&b("p",{children:st.none})]}),n.case?.remarks.map(r=>b("p",{class:"notice",role:"status",children:r})),b(Qd,{state:n}),b(SS,{state:n}),b("ol",{class:"sites",children:s.sites.map(r=>b(ES,{settled:i,site:r,result:s,state:n,open:t===r.site,choose:e,drop:a=>void qe("site/drop",{site:a}).then(i),part:(a,o)=>void qe("site/part",{site:a,scan_body:o}).then(i)},r.site))})]})}function IS({state:n,settled:t,file:e,look:i}){const s=n.result;return b(Me,{children:[s.warnings.length>0&&b("section",{class:"block",children:[b("h2",{children:st.warnings}),b("ul",{class:"plain",children:s.warnings.map(r=>b(FS,{line:r,look:i}))})]}),b(vS,{state:n,file:e,settled:t}),b(jd,{state:n}),s.not_shown.length>0&&b("section",{class:"block",children:[b("h2",{children:st.notShown}),b("p",{class:"note",children:st.notShownLead}),b("dl",{class:"checks",children:s.not_shown.map(r=>b("div",{children:[b("dt",{children:r.what}),b("dd",{children:r.check})]}))})]}),b(ff,{state:n,settled:t})]})}const US=/\((-?[\d.]+), (-?[\d.]+), (-?[\d.]+)\)/;function FS({line:n,look:t}){const e=US.exec(n);return b("li",{children:[st.capital(n),e&&b(Me,{children:[" ",b("button",{type:"button",class:"quiet small",onClick:()=>t([Number(e[1]),Number(e[2]),Number(e[3])]),children:st.showPlace})]})]})}function OS({state:n,theme:t,setTheme:e,setKeys:i}){const s=r=>r?st.choice[r.kind]?.(r.detail)??r.kind:"";return b("header",{class:"bar",children:[b("p",{class:"brand",children:[b("img",{src:"/static/icon.svg",alt:"",width:"22",height:"22"})," ",st.title]}),n.case&&b("p",{class:"code",children:st.case.title(n.case.code)}),b("p",{class:"place",title:n.folder,children:n.watch?st.watch(n.watch.folder,n.watch.last):n.read_only?st.shownFrom(n.folder):st.kept(n.folder)}),n.case&&b(lf,{}),!n.read_only&&b(Me,{children:[b("button",{type:"button",disabled:!n.undo||n.job!==null,onClick:()=>void qe("undo"),children:[st.undo,n.undo&&b("small",{children:s(n.undo)})]}),b("button",{type:"button",disabled:!n.redo||n.job!==null,onClick:()=>void qe("redo"),children:[st.redo,n.redo&&b("small",{children:s(n.redo)})]})]}),b("select",{"aria-label":st.theme.auto,value:t,onChange:r=>e(r.currentTarget.value),children:[b("option",{value:"auto",children:"Auto"}),b("option",{value:"light",children:st.theme.light}),b("option",{value:"dark",children:st.theme.dark})]}),b("button",{type:"button",onClick:()=>i(!0),children:st.keys})]})}function BS({close:n}){const t=cn(null);return Ne(()=>t.current?.showModal(),[]),b("dialog",{ref:t,onClose:n,"aria-labelledby":"keys-title",children:[b("h2",{id:"keys-title",children:st.keys}),b("dl",{class:"keys",children:st.keysList.map(([e,i])=>b("div",{children:[b("dt",{children:b("kbd",{children:e})}),b("dd",{children:i})]}))}),b("button",{type:"button",class:"primary",onClick:()=>t.current?.close(),children:st.close})]})}kd(b(LS,{}),document.getElementById("page"));
/**
 * @license
 * Copyright 2010-2026 Three.js Authors
 * SPDX-License-Identifier: MIT
 */
